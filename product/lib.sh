# Shared by the scripts beside it; sourced, not run. Bash 3.2 is enough.
# Sets: here (product/), root (the checkout), install (the folder the build lays out).
# shellcheck shell=bash

root=$(dirname "$here")
install=$here/target/tramontane
needed_java=21

die() {
    printf 'tramontane: %s\n' "$1" >&2
    exit "${2:-3}"
}

# --- Java -----------------------------------------------------------------------------------------------------------

# Feature number of the Java in a home folder ("21"); empty if it is none. Reads a file, starts nothing, if it can.
java_feature() {
    local version=
    [ -x "$1/bin/java" ] || return 0
    if [ -r "$1/release" ]; then
        version=$(sed -n 's/^JAVA_VERSION="\([^"]*\)".*/\1/p' "$1/release")
    fi
    [ -n "$version" ] || version=$("$1/bin/java" -version 2>&1 | sed -n 's/.*version "\([^"]*\)".*/\1/p' | head -n 1)
    version=${version#1.}
    version=${version%%[!0-9]*}
    printf '%s' "$version"
}

java_candidates() {
    [ -z "${JAVA_HOME:-}" ] || printf '%s\n' "$JAVA_HOME"
    local found
    if found=$(command -v java); then
        found=$(real_path "$found")
        printf '%s\n' "${found%/bin/java}"
    fi
    local home
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
    local home version
    java_home=
    while IFS= read -r home; do
        [ "$1" = run ] || [ -x "$home/bin/javac" ] || continue
        version=$(java_feature "$home")
        if [ -n "$version" ] && [ "$version" -ge "$needed_java" ]; then
            java_home=$home
            java_version=$version
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

need_maven() {
    command -v mvn >/dev/null || die "needs Maven to build: 'apt install maven'."
}

# --- Building -------------------------------------------------------------------------------------------------------

stamp=$here/target/built

# Everything that the install folder is made from. Tests and what Maven writes are not.
sources() {
    local place places=()
    for place in pom.xml bundles features product/launcher product/assembly product/samples product/catalogue; do
        [ ! -e "$root/$place" ] || places+=("$place")
    done
    (cd "$root" && find "${places[@]}" \( -name target -o -path '*/src/test' \) -prune -o -type f "$@")
}

# True if something was changed, added or taken away since the last build. The time of the change of the file's entry
# counts (-cnewer), so files moved in with an old date are seen as well.
stale() {
    [ -f "$stamp" ] && [ -f "$stamp.files" ] && [ -d "$install/lib" ] || return 0
    sources -print | LC_ALL=C sort | cmp -s - "$stamp.files" || return 0
    [ -n "$(sources -cnewer "$stamp" -print | head -n 1)" ]
}

# What stood there before a build began counts as built by it; what is changed meanwhile does not.
before_build() {
    mkdir -p "$here/target"
    rm -f "$stamp"
    : >"$stamp.new"
    sources -print | LC_ALL=C sort >"$stamp.files"
}

after_build() {
    make_archive
    mv "$stamp.new" "$stamp"
}

maven() {
    local quiet=
    # What newer Java versions say about libraries inside Maven is not for our users.
    [ "$java_version" -lt 24 ] || quiet="--sun-misc-unsafe-memory-access=allow --enable-native-access=ALL-UNNAMED"
    JAVA_HOME=$java_home MAVEN_OPTS="${MAVEN_OPTS:-} $quiet" mvn -B -f "$root/pom.xml" "$@"
}

one_at_a_time() {
    mkdir -p "$here/target"
    if command -v flock >/dev/null; then
        exec 9>"$here/target/build.lock"
        flock 9
    fi
}

build_if_needed() {
    stale || return 0
    need_java build
    need_maven
    one_at_a_time
    # Another one may have built while this one waited.
    if stale; then
        echo "tramontane: building, which takes a minute when libraries have to be fetched ..." >&2
        before_build
        if ! maven -q -pl product/assembly -am -Dmaven.test.skip=true package >"$here/target/build.log" 2>&1; then
            grep -E '^\[(ERROR|FATAL)\]|^ERROR|BUILD' "$here/target/build.log" | head -n 25 >&2 || true
            die "the build failed; all of it is in $here/target/build.log."
        fi
        after_build
    fi
    exec 9>&-
}

# --- Running --------------------------------------------------------------------------------------------------------

cache=${XDG_CACHE_HOME:-$HOME/.cache}/tramontane

# Where the archive of classes for this install folder, these jars and this Java is kept.
archive() {
    local folder jars
    folder=$(printf '%s' "$install" | cksum)
    jars=$(ls -ln "$install/lib" 2>/dev/null | cksum)
    printf '%s/%s-%s-%s.jsa' "$cache" "${folder%% *}" "${jars%% *}" "$java_version"
}

# An archive of loaded classes makes each start quicker by about a fifth. It is made once after a build, beside its place
# and then moved, so that no start ever meets half of one; without it everything works as well.
make_archive() {
    local made name
    made=$(archive)
    mkdir -p "$cache" 2>/dev/null && [ -w "$cache" ] || return 0
    name=${made##*/}
    rm -f "$cache/${name%%-*}"-*.jsa*
    java_flags
    "$java_home/bin/java" "${flags[@]}" "-XX:ArchiveClassesAtExit=$made.$$" -Xlog:disable -cp "$install/lib/*" \
        tramontane.launcher.Main --version >/dev/null 2>&1 </dev/null || true
    [ ! -f "$made.$$" ] || mv "$made.$$" "$made"
}

java_flags() {
    flags=(-XX:+UseSerialGC -Xshare:auto)
    # Felix looks into the JDK once at its start, which is all right but announced since version 24.
    [ "$java_version" -lt 23 ] || flags+=(--sun-misc-unsafe-memory-access=allow)
}

# run_tramontane [-Dname=value ...] -- arguments: becomes the program.
run_tramontane() {
    need_java run
    local made
    java_flags
    made=$(archive)
    # Should it not fit, Java goes without it; nobody needs to be told.
    [ ! -f "$made" ] || flags+=("-XX:SharedArchiveFile=$made" -Xlog:disable)
    while [ "$1" != -- ]; do
        flags+=("$1")
        shift
    done
    shift
    exec "$java_home/bin/java" "${flags[@]}" -cp "$install/lib/*" tramontane.launcher.Main "$@"
}
