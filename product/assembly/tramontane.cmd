@echo off
rem The window and the command line of this installation. Needs a Java 21 or newer and writes nothing here.
rem   tramontane                  opens the window, as a double click on this file does
rem   tramontane FILE.json        opens the window on a design
rem   tramontane VERB ...         runs a command; its exit code is that of the command
setlocal
set "INSTALL=%~dp0"
set "JAVA="
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
if not defined JAVA for %%J in (java.exe) do set "JAVA=%%~$PATH:J"
if not defined JAVA goto none
set "FEATURE="
for /f "tokens=2 delims==" %%V in ('call "%JAVA%" -XshowSettings:properties -version 2^>^&1 ^| findstr /c:"java.specification.version ="') do set /a "FEATURE=%%V" 2>nul
if not defined FEATURE goto none
if %FEATURE% LSS 21 goto none

set "FLAGS=-XX:+UseSerialGC -Xshare:auto -XX:-OmitStackTraceInFastThrow"
if %FEATURE% GEQ 23 set "FLAGS=%FLAGS% --sun-misc-unsafe-memory-access=allow"
if "%~1"=="" goto window
if "%~2"=="" if /i "%~x1"==".json" goto window

"%JAVA%" %FLAGS% -XX:TieredStopAtLevel=1 -cp "%INSTALL%lib\*" tramontane.launcher.Main %*
exit /b %ERRORLEVEL%

:window
set "DESIGN=%~f1"
if "%~1"=="" set "DESIGN=%INSTALL%samples\observatory.tramontane.json"
if %FEATURE% GEQ 22 set "FLAGS=%FLAGS% --enable-native-access=ALL-UNNAMED"
rem Without a console: what it has to say is in the window.
set "JAVAW=%JAVA:java.exe=javaw.exe%"
if not exist "%JAVAW%" set "JAVAW=%JAVA%"
start "" "%JAVAW%" %FLAGS% -Dtramontane.entry=desktop -cp "%INSTALL%lib\*" tramontane.launcher.Main "%DESIGN%"
exit /b 0

:none
echo tramontane: needs a Java, version 21 or newer: install a Temurin JDK, or set JAVA_HOME to its folder. 1>&2
if "%~1"=="" pause
exit /b 3
