# Finds a Java and starts the program with it; shared by the scripts here and by that of an installation. Sourced, not run.
# shellcheck shell=bash

: "${HOME:=/nonexistent}"
needed_java=21

die() {
    printf 'tramontane: %s\n' "$1" >&2
    exit "${2:-3}"
}

# --- Java -----------------------------------------------------------------------------------------------------------

# java_feature HOME: sets feature to the feature number of the Java in a folder (21), or to nothing if there is none.
# Each start asks this, so it reads a file, without starting anything, if it can.
java_feature() {
    local version= line
    feature=
    [ -x "$1/bin/java" ] || return 0
    if [ -r "$1/release" ]; then
        while IFS= read -r line; do
            case $line in JAVA_VERSION=*) version=${line#*\"} version=${version%%\"*} ;; esac
        done <"$1/release"
    fi
    [ -n "$version" ] || version=$("$1/bin/java" -version 2>&1 | sed -n 's/.*version "\([^"]*\)".*/\1/p' | head -n 1)
    version=${version#1.}
    feature=${version%%[!0-9]*}
}

java_candidates() {
    local home
    [ -z "${JAVA_HOME:-}" ] || printf '%s\n' "$JAVA_HOME"
    if home=$(command -v java); then
        home=$(real_path "$home")
        printf '%s\n' "${home%/bin/java}"
    fi
    for home in /usr/lib/jvm/* /opt/java/* "$HOME"/.sdkman/candidates/java/current \
        /Library/Java/JavaVirtualMachines/*/Contents/Home; do
        [ ! -x "$home/bin/java" ] || printf '%s\n' "$home"
    done
}

# Follows symbolic links to the end; macOS has no readlink -f before 12.3.
real_path() {
    local path=$1 target
    while target=$(readlink "$path"); do
        case $target in
            /*) path=$target ;;
            *) path=$(dirname "$path")/$target ;;
        esac
    done
    printf '%s/%s' "$(cd "$(dirname "$path")" && pwd -P)" "$(basename "$path")"
}

# find_java run|build: sets java_home and java_version to the first Java that is new enough (and can compile).
find_java() {
    local home
    java_home=
    while IFS= read -r home; do
        [ "$1" = run ] || [ -x "$home/bin/javac" ] || continue
        java_feature "$home"
        if [ -n "$feature" ] && [ "$feature" -ge "$needed_java" ]; then
            java_home=$home
            java_version=$feature
            return 0
        fi
    done <<EOF
$(java_candidates)
EOF
    return 1
}

need_java() {
    find_java "$1" || die "needs a Java development kit, version $needed_java or newer: 'apt install openjdk-21-jdk', or unpack a Temurin JDK and set JAVA_HOME to its folder."
}

# java_flags [desktop]: sets flags to what the program is started with, on the command line or with its window.
java_flags() {
    # The last flag keeps the messages of exceptions that are thrown often; findings show them.
    flags=(-XX:+UseSerialGC -Xshare:auto -XX:-OmitStackTraceInFastThrow)
    # Felix looks into the JDK once at its start, which is all right but announced since version 24.
    [ "$java_version" -lt 23 ] || flags+=(--sun-misc-unsafe-memory-access=allow)
    if [ "${1:-}" != desktop ]; then
        # A command is over before the second compiler has paid for itself: with the first alone a choice of 10,000 parts and a
        # network of 3,600 bays take half to nine tenths of the processor time.
        flags+=(-XX:TieredStopAtLevel=1)
        return 0
    fi
    flags+=(-Dtramontane.entry=desktop)
    # The window loads a library of the system, which is announced since version 24.
    [ "$java_version" -lt 22 ] || flags+=(--enable-native-access=ALL-UNNAMED)
    case $OSTYPE in
        # The first thread alone may draw there.
        darwin*) flags+=(-XstartOnFirstThread -Xdock:name=Tramontane) ;;
        # Without a session bus SWT would say so twice, to nobody's use.
        *) case ${DBUS_SESSION_BUS_ADDRESS:-} in
            '' | disabled:*) [ -S "${XDG_RUNTIME_DIR:-/nonexistent}/bus" ] \
                || flags+=(-Dorg.eclipse.swt.internal.SessionManagerDBus.disable=true) ;;
            esac ;;
    esac
}

# --- The window -----------------------------------------------------------------------------------------------------

# Whether a window can be shown at all; servers and pipelines have no display.
display_there() {
    case $OSTYPE in
        darwin* | msys* | cygwin*) return 0 ;;
        *) [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] ;;
    esac
}

# sample_or_file NAME INSTALL: sets file to the sample of that name unless there is a file that is called so.
sample_or_file() {
    file=$1
    [ -e "$1" ] || [ ! -f "$2/samples/$1.tramontane.json" ] || file=$2/samples/$1.tramontane.json
}
