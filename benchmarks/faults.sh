#!/usr/bin/env bash
# What becomes of files when the program is killed, the disk is full, a folder can only be read, names are strange, or two
# run at once. Prints one Markdown row for each campaign and ends with 1 if anything broke.
#
#   benchmarks/faults.sh [CAMPAIGN ...]     default: worksheet sheets fit sweep merge record fly disk places names clock twice
#   benchmarks/faults.sh launcher           its first build killed; some ten minutes
#
# KILLS=100 is how often each kind of work is killed, SEED=1 when; MINUTES ends each of them early. Half of the kills come
# at a random moment of the run, half within some milliseconds of the moment in which a hidden file appears. Needs root for
# disk and places (small file systems are mounted and taken away again), Xvfb and ffmpeg for fly, python3 and the system's
# languages for names, libfaketime for clock. PROGRAM and RECORDER name what is built already: simfeel and
# Simfeel.Flight.Tests.dll.
set -u

root=$(CDPATH='' cd -P "$(dirname "$0")/.." && pwd)
library=$root/src/Simfeel/bin/Release/net10.0/simfeel.dll
recorder=${RECORDER:-$root/tests/Simfeel.Flight.Tests/bin/Release/net10.0/Simfeel.Flight.Tests.dll}
KILLS=${KILLS:-100}
RANDOM=${SEED:-1}
bad=0

folder=$(mktemp -d)
mounts=''
# shellcheck disable=SC2317  # called by the trap
clean() {
    local place
    for place in $mounts; do umount "$place" 2>/dev/null; done
    rm -rf "$folder"
}
trap clean EXIT
export HOME=$folder/home XDG_CACHE_HOME='' XDG_CONFIG_HOME='' SIMFEEL_CONFIG='' SIMFEEL_OUTPUT='' SIMFEEL_CACHE='' DOTNET_CLI_HOME=$folder/home
mkdir -p "$HOME"
mkfifo "$folder/quiet"
exec {quiet}<>"$folder/quiet" # nothing ever comes out of it; see nap

simfeel() {
    if [ -n "${PROGRAM:-}" ]; then "$PROGRAM" "$@"; else dotnet "$library" "$@"; fi
}

say() { printf '%s\n' "$*" >&2; }

# Counts and names what broke.
broke() {
    bad=$((bad + 1))
    broken=$((broken + 1))
    say "  BROKEN: $*"
}

begin() {
    campaign=$1
    tried=0 broken=0 begun=$SECONDS
    say "$campaign"
}

# Whether a kind of work that is killed over and over may be killed again.
in_time() { [ $((SECONDS - begun)) -lt $((${MINUTES:-1000} * 60)) ]; }

# One row of the table; the argument says what was seen.
row() { printf '| %s | %d | %d | %s |\n' "$campaign" "$tried" "$broken" "$1"; }

sum() { sha256sum <"$1" | cut -d' ' -f1; }

# How many entries a folder has that the arguments behind it do not name.
strangers() {
    local place=$1 entry name count=0
    shift
    for entry in "$place"/* "$place"/.[!.]*; do
        [ -e "$entry" ] || continue
        for name; do [ "${entry##*/}" = "$name" ] && continue 2; done
        count=$((count + 1))
    done
    echo $count
}

# Runs a command and expects an exit code, one line of error that holds some words, and no trace of the stack.
expect() {
    local code=$1 words=$2 got
    shift 2
    tried=$((tried + 1))
    "$@" >"$folder/said" 2>"$folder/complained"
    got=$?
    [ $got -eq "$code" ] || broke "$* ended with $got, not $code: $(head -c 300 "$folder/complained")"
    [ -z "$words" ] || grep -qF -- "$words" "$folder/complained" || broke "$* does not say '$words': $(head -c 300 "$folder/complained")"
    ! grep -q '^   at ' "$folder/complained" || broke "$* shows a stack"
}

for part in "$root"/benchmarks/faults/*.sh; do
    # shellcheck source=/dev/null
    . "$part"
done

[ -n "${PROGRAM:-}" ] || [ -f "$library" ] || dotnet build -c Release -v q --nologo "$root/src/Simfeel"
[ -f "$recorder" ] || dotnet build -c Release -v q --nologo "$root/tests/Simfeel.Flight.Tests"

[ $# -gt 0 ] || set -- worksheet sheets fit sweep merge record fly disk places names clock twice
echo '| what was tried | times | broke | seen |'
echo '| --- | ---: | ---: | --- |'
for campaign in "$@"; do "faults_$campaign"; done
[ $bad -eq 0 ]
