# Clocks that are wrong or jump, files dated tomorrow; sourced by faults.sh. The clock is the program's own (libfaketime):
# the machine's is left alone.

faults_clock() {
    local d=$folder/clock csv=$root/assets/bench/wagtail-stand.csv preload want got day n process jumps=0
    preload=$(find /usr/lib /usr/local/lib -name libfaketimeMT.so.1 2>/dev/null | head -n 1)
    mkdir -p "$d"

    begin 'a clock of 1970, of a leap day, of 2038, of 2100'
    [ -n "$preload" ] || { broke 'libfaketime is not there (apt-get install faketime)'; return; }
    printf '@2026-06-01 12:00:00\n' >"$d/now"
    for day in '2026-06-01 12:00:00' '1970-01-01 00:00:05' '2028-02-29 23:59:58' '2038-01-19 03:14:05' '2100-12-31 23:59:58'; do
        rm -rf "$d"/s.* "$d/l.csv"
        printf '@%s\n' "$day" >"$d/now"
        expect 0 '' under_clock compare wagtail pipit --sheet "$d/s.html" --json
        cp "$folder/said" "$d/all"
        expect 0 '' under_clock fit "$csv" --build wagtail --out "$d/s.toml" --force
        expect 0 '' under_clock sweep wagtail --vary motor.volume=0.75..1.25/3 --metric hover_power --out "$d/s.csv"
        got=$(cat "$d/all" "$d/s.html" "$d/s.toml" "$d/s.csv" | sha256sum)
        [ -n "${want:-}" ] || want=$got
        [ "$got" = "$want" ] || broke "on $day numbers or pages differ"
        expect 0 '' under_clock lesson size --hands 1,2,3,4,5 --log "$d/l.csv"
        [ "$(grep -c "^${day%% *}," "$d/l.csv")" -eq 5 ] || broke "the log of $day has another date: $(tail -n 1 "$d/l.csv")"
    done
    row 'the same bytes on screen, page, build and table on every day; only a class log has the date'

    begin 'a clock that jumps by years to and fro within a run'
    printf '@2026-06-01 12:00:00\n' >"$d/now"
    set -- wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --metric stop_time --samples 600 --out "$d/j.csv"
    simfeel sweep "$@" >"$folder/said" 2>&1
    want=$(sum "$d/j.csv")
    rm -f "$d/j.csv" "$d/j.arrow"
    for n in 1 2; do
        { if [ $n -eq 1 ]; then under_clock sweep "$@"; else clocked dotnet exec "$recorder" 60 "$d/j.arrow"; fi; } >"$folder/said" 2>"$folder/complained" &
        process=$!
        while kill -0 $process 2>/dev/null; do
            for day in 2031 1999 2026; do
                printf '@%s-06-01 12:00:00\n' $day >"$d/next" && mv "$d/next" "$d/now"
                nap 0.05
                jumps=$((jumps + 1))
            done
        done
        wait $process || broke "it fails: $(head -c 300 "$folder/complained")"
        tried=$((tried + 1))
    done
    [ "$(sum "$d/j.csv")" = "$want" ] || broke 'the sweep ends with other bytes'
    # a tenth of the 60 000 readings is a row; how many stand in a message is the disk's affair
    [ "$(dotnet exec "$recorder" "$d/j.arrow")" = '6000 rows, flown again bit for bit' ] || broke 'the recording is not that flight'
    row "$jumps jumps; the sweep ends with the bytes of an undisturbed run, the recording is whole and flies again bit for bit"

    begin 'builds, data, a journal, a result and cached tables dated in 2060'
    cp "$root/assets/builds/wagtail.toml" "$csv" "$d"
    simfeel fit "$d/wagtail-stand.csv" --build "$d/wagtail.toml" --out "$d/want.toml" >"$folder/said" 2>&1
    simfeel weigh wagtail >"$d/want" 2>&1
    clocked_sweep_cut "$@"
    find "$d" "$HOME/.cache" -type f -exec touch -d '2060-01-01' {} +
    expect 0 '' simfeel fit "$d/wagtail-stand.csv" --build "$d/wagtail.toml" --out "$d/again.toml"
    cmp -s "$d/again.toml" "$d/want.toml" || broke 'a fit of data dated in 2060 differs'
    expect 0 '' simfeel weigh wagtail
    cmp -s "$folder/said" "$d/want" || broke 'tables dated in 2060 say something else'
    expect 0 '' simfeel sweep "$@"
    [ "$(sum "$d/j.csv")" = "$want" ] || broke 'a sweep that goes on from a journal dated in 2060 differs'
    row 'the same results; nothing is told from the date of a file'
}

# A command under the clock that stands in a file, read anew at each look; what measures spans of time stays true.
clocked() { env LD_PRELOAD="$preload" FAKETIME_TIMESTAMP_FILE="$d/now" FAKETIME_NO_CACHE=1 FAKETIME_DONT_FAKE_MONOTONIC=1 DONT_FAKE_MONOTONIC=1 "$@"; }

# shellcheck disable=SC2046  # words
under_clock() { clocked $(command_words) "$@"; }

# Leaves the journal of a sweep that was killed in its midst.
clocked_sweep_cut() {
    local n
    rm -f "$d/j.csv"
    set -m
    simfeel sweep "$@" >"$folder/said" 2>&1 &
    set +m
    for ((n = 0; n < 3000; n++)); do
        [ "$(stat -c %s "$d/j.csv.part" 2>/dev/null || echo 0)" -gt 2000 ] && break
        nap 0.02
    done
    kill -9 -- -$! 2>/dev/null
    wait $! 2>/dev/null
    [ -s "$d/j.csv.part" ] || say '  the sweep was over before it could be killed'
}
