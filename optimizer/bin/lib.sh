# Shared by withy and verify; sourced, never run. Everything it says goes to standard error.

JDK_PACKAGE=openjdk-17-jdk-headless

withy_stop() { # exit code, lines...
    local code=$1
    shift
    printf '%s\n' "$@" >&2
    exit "$code"
}

withy_can_install() { [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; }

withy_install() { # packages...
    printf 'Installing %s ...\n' "$*" >&2
    export DEBIAN_FRONTEND=noninteractive
    if [ -z "${WITHY_APT_UPDATED:-}" ]; then
        apt-get update -qq >&2 </dev/null || true
        WITHY_APT_UPDATED=1
    fi
    apt-get install -y -qq --no-install-recommends "$@" >&2 </dev/null
}

# The release number of the Java whose program is named: 17, 21, ... or nothing.
withy_java_release() {
    local java=$1 home line version=
    [ -x "$java" ] || return 1
    home=$(readlink -f "$java")
    home=${home%/*/*}
    if [ -r "$home/release" ]; then
        # Reading the file saves the 40 ms of asking the program.
        while read -r line; do
            case $line in JAVA_VERSION=*) version=${line#*=} version=${version//\"/} ;; esac
        done <"$home/release"
    fi
    [ -n "$version" ] || version=$("$java" -version 2>&1 | sed -n 's/.*version "\([^"]*\)".*/\1/p;T;q')
    version=${version#1.}
    version=${version%%[!0-9]*}
    [ -n "$version" ] && printf '%s\n' "$version"
}

# Sets JAVA_HOME to the first home with Java 17 or newer that has the named program (java or javac).
withy_look_for_java() {
    local program=$1 home release on_path
    on_path=$(command -v "$program" 2>/dev/null) || on_path=
    [ -z "$on_path" ] || on_path=$(readlink -f "$on_path") on_path=${on_path%/*/*}
    for home in "${JAVA_HOME:-}" "$on_path" /usr/lib/jvm/* /Library/Java/JavaVirtualMachines/*/Contents/Home; do
        [ -n "$home" ] && [ -x "$home/bin/$program" ] || continue
        release=$(withy_java_release "$home/bin/java") || continue
        if [ "$release" -ge 17 ]; then
            export JAVA_HOME=$home
            return 0
        fi
    done
    return 1
}

withy_need_java() { # java | javac
    withy_look_for_java "$1" && return 0
    if withy_can_install; then
        withy_install "$JDK_PACKAGE" || withy_install default-jdk-headless || true
        withy_look_for_java "$1" && return 0
    fi
    withy_stop 1 'Withy needs a Java 17 (or newer) development kit and found none.' \
        "Maybe type:  sudo apt-get install -y $JDK_PACKAGE"
}

# Sets the array MVN to the Maven to run: 3.8 or newer, else the project's own wrapper.
withy_need_maven() {
    local root=$1
    if withy_maven_is_new_enough; then
        MVN=(mvn)
        return 0
    fi
    if ! command -v mvn >/dev/null 2>&1 && withy_can_install; then
        withy_install maven || true
        if withy_maven_is_new_enough; then
            MVN=(mvn)
            return 0
        fi
    fi
    if command -v curl >/dev/null 2>&1 || command -v wget >/dev/null 2>&1; then
        MVN=(sh "$root/mvnw")
        return 0
    fi
    withy_stop 1 'Withy needs Maven 3.8 or newer to build itself and found neither it nor curl to bring it.' \
        'Maybe type:  sudo apt-get install -y maven'
}

withy_maven_is_new_enough() {
    local version major minor
    command -v mvn >/dev/null 2>&1 || return 1
    version=$(mvn -v 2>/dev/null </dev/null | sed -n 's/.*Apache Maven \([0-9][0-9.]*\).*/\1/p')
    major=${version%%.*}
    minor=${version#*.}
    minor=${minor%%.*}
    [ -n "$major" ] && { [ "$major" -gt 3 ] || { [ "$major" -eq 3 ] && [ "${minor:-0}" -ge 8 ]; }; }
}

# Holds the lock on the project's build until this process (or the one it turns into) ends.
withy_lock() {
    local file=$1/optimizer/.build.lock owner nameless=0
    if command -v flock >/dev/null 2>&1; then
        { exec 9>"$file"; } 2>/dev/null || return 1
        flock 9
        return 0
    fi
    # Without flock: making a folder is the one step only one process can win.
    while ! mkdir "$file.d" 2>/dev/null; do
        [ -w "$1/optimizer" ] || return 1
        owner=$(cat "$file.d/pid" 2>/dev/null) || owner=
        [ -n "$owner" ] || nameless=$((nameless + 1))
        # Its owner is gone, or was stopped before it could write its number (5 s).
        if { [ -n "$owner" ] && ! kill -0 "$owner" 2>/dev/null; } || [ "$nameless" -gt 25 ]; then
            rm -rf "$file.d"
            nameless=0
            continue
        fi
        sleep 0.2
    done
    echo "$BASHPID" >"$file.d/pid"
    WITHY_LOCK_FOLDER=$file.d
}

withy_unlock() {
    if [ -n "${WITHY_LOCK_FOLDER:-}" ]; then
        rm -rf "$WITHY_LOCK_FOLDER"
        WITHY_LOCK_FOLDER=
    else
        exec 9>&-
    fi
}

# True where the jar was built since the last change to what it is built from.
withy_is_fresh() {
    local root=$1 stamp=$1/optimizer/target/withy-built
    [ -f "$root/optimizer/target/withy-optimizer.jar" ] && [ -f "$stamp" ] && [ -z "$(
        find "$root/pom.xml" "$root/optimizer/pom.xml" "$root/optimizer/src/main" -newer "$stamp" -print -quit
    )" ]
}

# Builds the jar quietly, its log beside it; the caller holds the lock. A build that fails or is cut off leaves the
# former stamp, so that the next call builds again.
withy_build() {
    local root=$1 log=$1/optimizer/target/withy-build.log
    withy_need_java javac
    withy_need_maven "$root"
    withy_start_build "$root" || return 1
    if ! (cd "$root" && "${MVN[@]}" -B -q -ntp -pl optimizer -Dmaven.test.skip=true package) >"$log" 2>&1 </dev/null 9>&-; then
        # Colours are for a terminal; Maven writes some even into a file.
        sed 's/\x1b\[[0-9;]*m//g' "$log" >&2
        return 1
    fi
    withy_end_build "$root"
}

# The stamp is as old as the start of the build: a file changed meanwhile makes the next call build again.
withy_start_build() {
    mkdir -p "$1/optimizer/target" && WITHY_STARTED=$(mktemp "$1/optimizer/target/started.XXXXXX")
}

withy_end_build() {
    withy_archive_classes "$1"
    mv -f "$WITHY_STARTED" "$1/optimizer/target/withy-built"
    WITHY_STARTED=
}

withy_forget_start() { [ -z "${WITHY_STARTED:-}" ] || rm -f "$WITHY_STARTED"; }

# Sets archive to the name of the class archive of this Java, which fits no other: told from the first lines of what
# it says of itself, without starting a program.
withy_archive_name() {
    local release=
    read -r -d '' -n 300 release 2>/dev/null <"$JAVA_HOME/release" || :
    release=${release//[!A-Za-z0-9]/}
    archive=$1/optimizer/target/withy-${release:0:120}.jsa
}

# Later calls take their classes from this archive, checked and laid out already; Withy runs without it too. It fits
# the very jar it was made from. It holds what these calls load between them.
withy_archive_classes() {
    local root=$1 jar=$1/optimizer/target/withy-optimizer.jar archive limit=() brief=scenarios/kayak-estuary/brief.json
    withy_archive_name "$root"
    [ ! "$archive" -nt "$jar" ] || return 0
    rm -f "$root"/optimizer/target/withy-*.jsa
    ! command -v timeout >/dev/null 2>&1 || limit=(timeout 60)
    (
        unset WITHY_CATALOG
        cd "$root" || exit
        java() { ${limit[@]+"${limit[@]}"} "$JAVA_HOME/bin/java" -XX:+UseSerialGC "$@"; }
        names() {
            java -XX:TieredStopAtLevel=1 -XX:DumpLoadedClassList="$archive.one" -Dwithy.home="$root" -jar "$jar" "$@"
            cat "$archive.one" >&3
        }
        exec 3>"$archive.names"
        names demo
        names propose "$brief" --catalog catalog-samples/wide
        names whynot "$brief" --station seat --catalog catalog-samples/wide
        awk '!seen[$0]++' "$archive.names" >"$archive.one"
        java -Xshare:dump -XX:SharedClassListFile="$archive.one" -XX:SharedArchiveFile="$archive.new" -cp "$jar"
    ) >/dev/null 2>&1 </dev/null 9>&-
    rm -f "$archive.one" "$archive.names"
    [ ! -f "$archive.new" ] || mv -f "$archive.new" "$archive"
}
