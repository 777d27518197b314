# SPDX-License-Identifier: MIT
# Sourced by tests/run: steps with a name, a time limit, a log and a count of what passed.

only=("$@")
passed=0
failed=0
failed_steps=" "
log_lines_shown=60

configure() { # FOLDER OPTION…
    local folder=$1 launcher=()
    shift
    [ -f "$folder/build.ninja" ] && return 0
    command -v ccache >/dev/null && launcher=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    cmake -S . -B "$folder" -G Ninja "${launcher[@]}" "$@"
}

wanted() {
    local name
    [ ${#only[@]} -eq 0 ] && return 0
    for name in "${only[@]}"; do [[ $1 == "$name"* ]] && return 0; done
    return 1
}

# Named on the command line, not just wanted because everything is.
asked() { [ ${#only[@]} -gt 0 ] && wanted "$1"; }

# Adds up what a log says: doctest's summaries, or a last line "N passed, N failed". A step that
# says nothing is one check.
count() { # LOG STATUS
    local found
    found=$(awk '
        /\[doctest\] test cases:/ {
            match($0, /\|[ ]*[0-9]+ passed/); good += substr($0, RSTART + 1) + 0
            match($0, /\|[ ]*[0-9]+ failed/); bad += substr($0, RSTART + 1) + 0
        }
        /^[0-9]+ passed, [0-9]+ failed$/ { good = $1; bad = $3 }
        END { print good + 0, bad + 0 }' "$1")
    local good=${found% *} bad=${found#* }
    [ "$good" = 0 ] && [ "$bad" = 0 ] && [ "$2" = 0 ] && good=1
    [ "$bad" = 0 ] && [ "$2" != 0 ] && bad=1
    echo "$good $bad"
}

report() { # NAME STATUS SECONDS LOG
    local counts good bad
    counts=$(count "$4" "$2")
    good=${counts% *} bad=${counts#* }
    passed=$((passed + good))
    failed=$((failed + bad))
    if [ "$bad" = 0 ]; then
        echo "ok    $1: $good passed ($3 s)"
        return 0
    fi
    failed_steps+="$1 "
    echo "FAIL  $1: $good passed, $bad failed ($3 s)"
    [ "$2" = 124 ] && echo "      stopped at its time limit"
    tail -n $log_lines_shown "$4" | sed 's/^/      | /'
}

step() { # NAME LIMIT_S COMMAND…
    local name=$1 limit=$2 log=build/logs/$1.log begun=$SECONDS status
    shift 2
    wanted "$name" || return 0
    # In a group of its own, so that the time limit ends all that it started.
    timeout --kill-after=10 "$limit" bash -c "$(declare -f)
        $(declare -p web_packages test_packages fuzz_seconds 2>/dev/null)
        \"\$@\"" step "$@" >"$log" 2>&1 </dev/null
    status=$?
    report "$name" "$status" $((SECONDS - begun)) "$log"
}

# after NAME step …: not run when that step failed; what cannot be tried has failed.
after() {
    local needed=$1
    shift
    if [[ $failed_steps == *" $needed "* ]] && wanted "$2"; then
        echo "FAIL  $2: not run, $needed failed"
        failed=$((failed + 1))
        failed_steps+="$2 "
        return 0
    fi
    "$@"
}

finish() {
    echo "$passed passed, $failed failed"
    [ "$failed" -eq 0 ]
    exit
}
