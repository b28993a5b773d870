#!/usr/bin/env bash
# What each way to publish the program costs and brings, as a Markdown table.
#
#   benchmarks/publish.sh [ROUNDS]      default 5; ten minutes and more, most of it compiling
#
# Each cell is the least of the rounds, which take all programs in turn: seconds of the wall / seconds of processor time
# (the one to read where the machine does other work). "jitted" counts the methods that `compare` still compiled while
# it ran, first quick and then again optimised. Works in the source tree's obj folders, keeps nothing else.
set -eu

root=$(CDPATH='' cd -P "$(dirname "$0")/.." && pwd)
rounds=${1:-5}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export MSBUILDDISABLENODEREUSE=1
TIMEFORMAT='%R %U %S'
names='plain ready ready-native alone composite composite-native'
native=-p:PublishReadyToRunCrossgen2ExtraArgs=--instruction-set:native

options() {
    case $1 in
        plain) echo --self-contained false ;;
        ready) echo --self-contained false -p:PublishReadyToRun=true ;;
        ready-native) echo --self-contained false -p:PublishReadyToRun=true $native ;;
        alone) echo --self-contained true -p:PublishReadyToRun=true ;;
        composite) echo --self-contained true -p:PublishReadyToRun=true -p:PublishReadyToRunComposite=true ;;
        composite-native) echo --self-contained true -p:PublishReadyToRun=true -p:PublishReadyToRunComposite=true $native ;;
    esac
}

# Arguments: program, then its own.
start() {
    local program=$folder/$1
    shift
    if [ -f "$program/libcoreclr.so" ]; then "$program/simfeel" "$@"; else dotnet "$program/simfeel.dll" "$@"; fi
}

for name in $names; do
    rm -rf "$root/src/Simfeel/obj/Release"
    # shellcheck disable=SC2046  # words
    { time dotnet publish "$root/src/Simfeel/Simfeel.csproj" -c Release --use-current-runtime -o "$folder/$name" --nologo \
        -v quiet $(options "$name") >&2; } 2>"$folder/said" || { cat "$folder/said" >&2; exit 1; }
    tail -n 1 "$folder/said" >"$folder/$name.publish"
    # Rotor tables are taken from the cache by all alike.
    start "$name" weigh wagtail >/dev/null
    start "$name" compare wagtail curlew >/dev/null
done

round=0
while [ $((round += 1)) -le "$rounds" ]; do
    for name in $names; do
        { time start "$name" weigh wagtail >/dev/null; } 2>>"$folder/$name.weigh"
        { time start "$name" compare wagtail curlew >/dev/null; } 2>>"$folder/$name.compare"
        { time start "$name" compare wagtail curlew --sheet "$folder/sheet.html" >/dev/null; } 2>>"$folder/$name.sheet"
    done
done

# Prints the least wall and the least processor time of a file's rows.
least() {
    LC_ALL=C awk 'NF == 3 { if (!n++ || $1 < wall) wall = $1; if (n == 1 || $2 + $3 < cpu) cpu = $2 + $3 }
        END { printf "%.2f / %.2f", wall, cpu }' "$1"
}

echo '| published as | weigh, s | compare, s | compare --sheet, s | publishing, s | MB | jitted quick | jitted optimised |'
echo '| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |'
for name in $names; do
    # The list is written by threads that outlive the program's end, which may then fail; the list is whole enough.
    DOTNET_JitStdOutFile=$folder/jitted DOTNET_JitDisasmSummary=1 start "$name" compare wagtail curlew >/dev/null 2>&1 || true
    printf '| %s | %s | %s | %s | %s | %d | %d | %d |\n' "$name" "$(least "$folder/$name.weigh")" "$(least "$folder/$name.compare")" \
        "$(least "$folder/$name.sheet")" "$(least "$folder/$name.publish")" "$(du -sm "$folder/$name" | cut -f 1)" \
        "$(grep -c '\[Tier0' "$folder/jitted")" "$(grep -c '\[Tier1\|\[FullOpts' "$folder/jitted")"
    rm -f "$folder/jitted"
done
