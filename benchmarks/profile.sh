#!/usr/bin/env bash
# A sampled profile of a run of the program: which functions its processor time goes to, as Markdown.
#
#   benchmarks/profile.sh sweep wagtail --vary motor.volume=0.8..1.6 --samples 2000
#   xvfb-run -a benchmarks/profile.sh -- dotnet run -c Release --no-build --project benchmarks/Simfeel.Benchmarks -- --flight frames
#   PROFILE_FOLDED=stacks.txt benchmarks/profile.sh ...    keeps each stack with its number of samples, root first
#
# Needs Linux perf. Samples are taken by the kernel's software clock, so it works in virtual machines, too. "self" is time
# in the function's own code (a perf-*.map without a name is code that a graphics driver compiled), "with callees" counts all that stands above it on the stack (once where it calls itself).
set -eu

root=$(CDPATH='' cd -P "$(dirname "$0")/.." && pwd)
rows=${PROFILE_ROWS:-25}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

# Names for compiled code; perf looks them up only where code is not mapped from a file, which W^X does.
export DOTNET_PerfMapEnabled=1 DOTNET_EnableWriteXorExecute=0
if [ "${1:-}" = -- ]; then
    shift
else
    set -- dotnet "$root/src/Simfeel/bin/Release/net10.0/simfeel.dll" "$@"
fi
perf record -q -F 499 -g -e cpu-clock -o "$folder/samples" "$@" >&2 || true

# One line for each sample: its frames from the root to the leaf, separated by semicolons.
perf script -i "$folder/samples" -F comm,ip,sym,dso 2>/dev/null | LC_ALL=C awk '
    function plain(name,   at) {
        sub(/\+0x[0-9a-f]+$/, "", name)
        # compiled code: type [module] Type::Method(arguments)[tier]
        sub(/\(.*$/, "", name)
        while (match(name, /\[[A-Za-z0-9_.]+\] /)) name = substr(name, RSTART + RLENGTH)
        gsub(/;/, ",", name)
        return name
    }
    /^[^ \t]/ { depth = 0; next }
    NF == 0 {
        if (depth == 0) next
        line = frame[depth]
        for (i = depth - 1; i >= 1; i--) line = line ";" frame[i]
        print line
        depth = 0
        next
    }
    {
        name = $0
        sub(/^[ \t]*[0-9a-f]+ /, "", name)
        library = ""
        if (match(name, / \([^()]*\)$/)) { library = substr(name, RSTART + 2, RLENGTH - 3); name = substr(name, 1, RSTART - 1) }
        sub(/^.*\//, "", library)
        sub(/ \(deleted\)$/, "", library)
        # a name is worth nothing where the library has none: its file tells more
        frame[++depth] = name ~ /^\[unknown\]/ || name == "" ? "in " library : plain(name)
    }' | sort | uniq -c | sed 's/^ *\([0-9]*\) /\1 /' >"$folder/folded"
[ -z "${PROFILE_FOLDED:-}" ] || cp "$folder/folded" "$PROFILE_FOLDED"

LC_ALL=C awk -v rows="$rows" '
    {
        count = $1
        all += count
        sub(/^[0-9]+ /, "")
        n = split($0, frames, ";")
        self[frames[n]] += count
        split("", seen)
        for (i = 1; i <= n; i++) if (!(frames[i] in seen)) { seen[frames[i]] = 1; total[frames[i]] += count }
    }
    function table(head, by, other,   name, m, i, j, names, t) {
        printf "\n| %s | self %% | with callees %% |\n| --- | ---: | ---: |\n", head
        m = 0
        for (name in by) names[++m] = name
        for (i = 1; i <= rows && i <= m; i++) {
            for (j = i + 1; j <= m; j++) if (by[names[j]] > by[names[i]]) { t = names[i]; names[i] = names[j]; names[j] = t }
            printf "| `%s` | %.1f | %.1f |\n", names[i], 100 * self[names[i]] / all, 100 * total[names[i]] / all
        }
    }
    END {
        if (all == 0) { print "No samples."; exit 1 }
        printf "%d samples, one each 2 ms of processor time.\n", all
        table("function, by its own time", self)
        table("function, by its time with callees", total)
    }' "$folder/folded"
