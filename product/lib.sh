# Shared by the scripts beside it; sourced, not run. Bash 3.2 is enough.
# Sets: here (product/), root (the checkout), install (the folder the build lays out).
# shellcheck shell=bash

. "$here/java.sh"
root=${here%/*}
install=$here/target/tramontane

need_maven() {
    command -v mvn >/dev/null || die "needs Maven to build: 'apt install maven'."
}

# --- Building -------------------------------------------------------------------------------------------------------

stamp=$here/target/built

# Everything that the install folder is made from. Tests and what Maven writes are not.
sources() {
    local place places=()
    for place in pom.xml bundles features product/java.sh product/launcher product/assembly product/samples product/catalogue; do
        [ ! -e "$root/$place" ] || places+=("$place")
    done
    (cd "$root" && find "${places[@]}" \( -name target -o -path '*/src/test' -o -name '.*' \) -prune -o -type f "$@")
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
    TRAMONTANE_BUILDING=1 JAVA_HOME=$java_home MAVEN_OPTS="${MAVEN_OPTS:-} $quiet" mvn -B -f "$root/pom.xml" "$@"
}

# build_errors LOG: what went wrong, without what Maven always says.
build_errors() {
    grep -E '^\[ERROR\] (Failed to execute|COMPILATION|.*\.java:)|^tests: .*(could not run|lists|is not|needs)' "$1" \
        | LC_ALL=C sort -u | head -n 25 || true
}

one_at_a_time() {
    mkdir -p "$here/target" 2>/dev/null && [ -w "$here/target" ] \
        || die "has to build, but may not write to $here/target; build once as somebody who may."
    if command -v flock >/dev/null; then
        exec 9>"$here/target/build.lock"
        flock 9
    fi
}

build_if_needed() {
    # A test that runs these scripts would wait for the build that it is a part of.
    [ -z "${TRAMONTANE_BUILDING:-}" ] || return 0
    stale || return 0
    need_java build
    need_maven
    one_at_a_time
    # Another one may have built while this one waited.
    if stale; then
        echo "tramontane: building, which takes a minute when libraries have to be fetched ..." >&2
        before_build
        if ! maven -q -pl product/assembly -am -Dmaven.test.skip=true package >"$here/target/build.log" 2>&1; then
            build_errors "$here/target/build.log" >&2
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
        tramontane.launcher.Main solve "$install/samples/quick.tramontane.json" >/dev/null 2>&1 </dev/null || true
    [ ! -f "$made.$$" ] || mv "$made.$$" "$made"
    # Looked up at each start rather than worked out again.
    printf '%s\n%s\n' "$java_home" "$made" >"$here/target/archive"
}

# run_tramontane [--desktop] [-Dname=value ...] -- arguments: becomes the program.
run_tramontane() {
    local made= built_by= entry=
    if [ "$1" = --desktop ]; then
        entry=desktop
        shift
    fi
    if [ -f "$here/target/archive" ]; then
        { IFS= read -r built_by && IFS= read -r made; } <"$here/target/archive" || true
    fi
    # The Java that built it runs it, unless another one is asked for or it has gone.
    if [ -n "$built_by" ] && [ "${JAVA_HOME:-$built_by}" = "$built_by" ]; then
        java_home=$built_by
        java_feature "$java_home"
        java_version=$feature
        [ -n "$java_version" ] || need_java run
    else
        need_java run
    fi
    java_flags $entry
    # Should the archive not fit, Java goes without it; nobody needs to be told.
    [ ! -f "$made" ] || flags+=("-XX:SharedArchiveFile=$made" -Xlog:disable)
    while [ "$1" != -- ]; do
        flags+=("$1")
        shift
    done
    shift
    exec "$java_home/bin/java" "${flags[@]}" -cp "$install/lib/*" tramontane.launcher.Main "$@"
}
