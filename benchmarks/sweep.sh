#!/usr/bin/env bash
# How a sweep's price grows with the number of builds: rate, processor time and memory, as a Markdown table.
#
#   benchmarks/sweep.sh [BUILDS ...]      default 1000 10000 100000; the last takes some minutes
#
# Processor time counts, since other work on the machine lengthens only the time of the wall. "each further build" is the
# difference to the row before, free of the start. The working set is read twice a second; its columns are the middle
# values of the run's quarters.
set -eu

root=$(CDPATH='' cd -P "$(dirname "$0")/.." && pwd)
program=$root/src/Simfeel/bin/Release/net10.0/simfeel.dll
[ -f "$program" ] || dotnet build -c Release -v q --nologo "$root/src/Simfeel"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
[ $# -gt 0 ] || set -- 1000 10000 100000

sweep() {
    dotnet "$program" sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --vary arm.length=0.9..1.2 \
        --vary motor.kv=0.9..1.1 --metric stop_time,climb_in_1_s --samples "$1" --fresh --out "$folder/sweep.parquet" >"$folder/said" 2>"$folder/complained"
}

# Adds highest and present working set, kB, of whichever of some processes is the program.
note() {
    local process key value high now
    for process in "$@"; do
        high=0 now=0
        while read -r key value _; do
            case $key in VmHWM:) high=$value ;; VmRSS:) now=$value ;; esac
        done 2>/dev/null <"/proc/$process/status" || continue
        [ "$now" -lt 20000 ] || echo "$high $now" >>"$folder/memory"
    done
}

# The rotor table is taken from the cache by all alike.
sweep 2

echo '| builds | wall s | builds/s | CPU s | CPU ms/build | CPU ms for each further build | VmHWM MB | working set MB, by quarters of the run |'
echo '| ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |'
before_builds=0 before_cpu=0
for builds in "$@"; do
    TIMEFORMAT='%R %U %S'
    : >"$folder/memory"
    { time { sweep "$builds" &
        worker=$!
        while kill -0 "$worker" 2>/dev/null; do
            note $worker $(cat "/proc/$worker/task/$worker/children" 2>/dev/null)
            sleep 0.5
        done
        wait "$worker" || { cat "$folder/complained" >&2; exit 1; }; }; } 2>"$folder/time"
    read -r wall user system <"$folder/time"
    LC_ALL=C awk -v n="$builds" -v wall="$wall" -v user="$user" -v system_time="$system" -v n0="$before_builds" -v cpu0="$before_cpu" '
        { high = $1 > high ? $1 : high; now[NR] = $2 }
        function middle(from, to,   i, j, t, m, s) {
            m = 0
            for (i = from; i <= to; i++) { t = now[i]; for (j = m; j > 0 && s[j] > t; j--) s[j + 1] = s[j]; s[j + 1] = t; m++ }
            return m ? s[int((m + 1) / 2)] : 0
        }
        END {
            cpu = user + system_time
            printf "| %d | %.1f | %.0f | %.1f | %.3f | %.3f | %.0f |", n, wall, n / wall, cpu, 1000 * cpu / n, 1000 * (cpu - cpu0) / (n - n0), high / 1024
            for (q = 0; q < 4; q++) printf " %.0f", middle(int(q * NR / 4) + 1, int((q + 1) * NR / 4)) / 1024
            print " |"
        }' "$folder/memory"
    before_builds=$builds
    before_cpu=$(LC_ALL=C awk -v a="$user" -v b="$system" 'BEGIN { print a + b }')
done
