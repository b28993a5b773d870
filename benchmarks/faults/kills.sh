# Kills at random moments, sourced by faults.sh.

# Starts a command in a process group of its own and kills the group: at a random moment of the time that it takes, or,
# every other time, up to 8 ms after a hidden or unfinished file appears in a folder. Sets ended to its exit code, 137 for a
# kill that came in time; killed counts those, within those of them that left a file of this run unfinished.
# Arguments: time of a whole run in ms, folder, command.
kill_within() {
    local whole=$1 place=$2 process start left
    shift 2
    touch "$folder/begun"
    set -m
    "$@" >"$folder/said" 2>"$folder/complained" &
    process=$!
    set +m
    if [ $((tried % 2)) -eq 0 ]; then
        left=$((RANDOM * (whole + whole / 10) / 32768))
        sleep "$((left / 1000)).$(printf %03d $((left % 1000)))"
    else
        start=$SECONDS
        while kill -0 $process 2>/dev/null && [ $((SECONDS - start)) -lt 120 ]; do
            unfinished "$place" && break
            nap 0.001
        done
        nap "0.00$((RANDOM % 9))"
    fi
    kill -9 -- -$process 2>/dev/null
    wait $process 2>/dev/null
    ended=$?
    tried=$((tried + 1))
    [ $ended -eq 137 ] || return 0
    killed=$((killed + 1))
    ! unfinished "$place" || within=$((within + 1))
}

# Sleeps without a process of its own, which would take longer than the writing of a small file. Argument: seconds.
nap() { [ "$1" = 0.000 ] || read -r -t "$1" -u "$quiet"; }

# Whether a folder has a file that the last run began and did not finish.
unfinished() {
    local entry
    for entry in "$1"/.simfeel-*.part* "$1"/*.arrow.part; do [ "$entry" -nt "$folder/begun" ] && return 0; done
    return 1
}

# Sets whole to the milliseconds that a command takes; the second run counts, when what can be kept is kept.
time_of() {
    local start
    "$@" >"$folder/said" 2>"$folder/complained" || broke "$* fails: $(head -c 300 "$folder/complained")"
    start=$(date +%s%N)
    "$@" >"$folder/said" 2>"$folder/complained"
    whole=$((($(date +%s%N) - start) / 1000000))
}

# A command that writes one file, in whose place a good one stands. Arguments: title, file, how often, command.
# A sheet has no clock in it, so the new file is known by its bytes.
kill_writer() {
    local title=$1 file=$2 often=$3 whole old new now is_old=0 is_new=0 litter=0 most=0 place
    shift 3
    begin "$title"
    killed=0 within=0
    place=${file%/*}
    time_of "$@"
    new=$(sum "$file")
    printf 'A good file that stood there.\n' >"$folder/old"
    old=$(sum "$folder/old")
    while [ $tried -lt "$often" ] && in_time; do
        cp "$folder/old" "$file"
        kill_within "$whole" "$place" "$@"
        now=$(sum "$file")
        case $now in
            "$old") is_old=$((is_old + 1)) ;;
            "$new") is_new=$((is_new + 1)) ;;
            *) broke "$file is neither the old nor the new one" ;;
        esac
        litter=$(strangers "$place" "${file##*/}")
        [ "$litter" -le "$most" ] || most=$litter
    done
    [ $most -le 1 ] || broke "$most files were left beside at once"
    "$@" >"$folder/said" 2>"$folder/complained"
    litter=$(strangers "$place" "${file##*/}")
    [ "$litter" -eq 0 ] || broke "$litter files are left after an undisturbed run"
    row "$killed killed before their end, $within of them within the writing; $is_old old files whole, $is_new new ones whole; at most $most file left beside, none after the next run"
}

# All kinds of sheet between them.
faults_sheets() {
    local kind place=$folder/sheets
    mkdir -p "$place"
    for kind in html md json; do
        kill_writer "kill -9, compare --sheet .$kind" "$place/sheet.$kind" $(((KILLS + 2) / 3)) \
            simfeel compare wagtail curlew --draws 20 --sheet "$place/sheet.$kind"
        rm -f "$place"/* "$place"/.simfeel*
    done
}

# The same way of writing behind a short run, so that many kills meet the writing itself.
faults_worksheet() {
    local place=$folder/worksheet
    mkdir -p "$place"
    kill_writer 'kill -9, bench --worksheet .html' "$place/sheet.html" "$KILLS" simfeel bench wagtail --worksheet "$place/sheet.html" --force
}

faults_fit() {
    local place=$folder/fit
    mkdir -p "$place"
    kill_writer 'kill -9, fit into a build file' "$place/copy.toml" "$KILLS" \
        simfeel fit "$root/assets/bench/wagtail-stand.csv" --build wagtail --out "$place/copy.toml" --force
}

# A sweep is killed and started again until it ends, then the next one begins.
faults_sweep() {
    local place=$folder/sweep whole csv parquet old ends=0 resumed=0 most=0 litter
    mkdir -p "$place"
    begin 'kill -9, sweep into .parquet and .csv, started again until it ends'
    killed=0 within=0
    set -- simfeel sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --metric stop_time \
        --samples 1500 --out "$place/s.parquet,$place/s.csv"
    time_of "$@"
    parquet=$(sum "$place/s.parquet") csv=$(sum "$place/s.csv")
    old=$(printf 'An older result.\n' | tee "$folder/old" | sha256sum | cut -d' ' -f1)
    cp "$folder/old" "$place/s.parquet"
    cp "$folder/old" "$place/s.csv"
    while [ $tried -lt "$KILLS" ] && in_time; do
        kill_within "$whole" "$place" "$@"
        ! grep -q '^Going on with' "$folder/complained" || resumed=$((resumed + 1))
        case $(sum "$place/s.parquet") in "$old" | "$parquet") ;; *) broke 's.parquet is neither old nor new' ;; esac
        case $(sum "$place/s.csv") in "$old" | "$csv") ;; *) broke 's.csv is neither old nor new' ;; esac
        litter=$(strangers "$place" s.parquet s.csv s.parquet.part)
        [ "$litter" -le "$most" ] || most=$litter
        [ "$ended" -ne 137 ] || continue
        [ "$ended" -eq 0 ] || broke "it ended with $ended: $(head -c 300 "$folder/complained")"
        [ "$(sum "$place/s.parquet") $(sum "$place/s.csv")" = "$parquet $csv" ] || broke 'the bytes differ from an undisturbed run'
        [ ! -e "$place/s.parquet.part" ] || broke 'the journal is left'
        ends=$((ends + 1))
        cp "$folder/old" "$place/s.parquet"
        cp "$folder/old" "$place/s.csv"
    done
    "$@" >"$folder/said" 2>"$folder/complained" || broke 'the last run fails'
    [ "$(sum "$place/s.parquet") $(sum "$place/s.csv")" = "$parquet $csv" ] || broke 'the bytes differ from an undisturbed run'
    [ $most -le 1 ] || broke "$most files were left beside at once"
    [ "$(strangers "$place" s.parquet s.csv)" -eq 0 ] || broke 'files are left at the end'
    row "$killed killed ($within within the writing of a result), $resumed went on from a journal, $((ends + 1)) sweeps came to their end with the bytes of an undisturbed run; at most $most file left beside"
}

faults_merge() {
    local place=$folder/merge share
    mkdir -p "$place"
    for share in 1 2; do
        simfeel sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --metric stop_time --samples 1500 \
            --out "$folder/m.parquet" --shard $share/2 >"$folder/said" 2>&1
    done
    kill_writer 'kill -9, sweep-merge' "$place/m.parquet" "$KILLS" \
        simfeel sweep-merge "$place/m.parquet" "$folder/m.parquet.share-1-of-2" "$folder/m.parquet.share-2-of-2"
}

# Whether an Arrow stream has the mark of its end.
is_whole() { [ "$(tail -c 8 "$1" | od -An -tx1 | tr -d ' \n')" = ffffffff00000000 ]; }

# The recorder without a window, as fast as it can; a whole older recording stands in the place.
faults_record() {
    local place=$folder/record file whole old is_old=0 is_new=0 parts=0
    mkdir -p "$place"
    file=$place/flight.arrow
    begin 'kill -9, recording over an older one, without a window'
    killed=0 within=0
    set -- dotnet exec "$recorder" 60 "$file"
    time_of "$@"
    is_whole "$file" || broke 'an undisturbed recording has no end'
    cp "$file" "$folder/old"
    old=$(sum "$folder/old")
    while [ $tried -lt "$KILLS" ] && in_time; do
        cp "$folder/old" "$file"
        kill_within "$whole" "$place" "$@"
        if [ "$(sum "$file")" = "$old" ]; then
            is_old=$((is_old + 1))
        elif is_whole "$file"; then
            is_new=$((is_new + 1))
        else
            broke 'the recording is neither the old one nor whole'
        fi
        [ ! -s "$file.part" ] || parts=$((parts + 1))
        [ "$(strangers "$place" flight.arrow flight.arrow.part)" -eq 0 ] || broke 'something else lies beside'
    done
    "$@" >"$folder/said" 2>"$folder/complained"
    [ "$(strangers "$place" flight.arrow)" -eq 0 ] || broke 'files are left after an undisturbed run'
    row "$killed killed, $within of them while recording; $is_old old recordings whole, $is_new new ones whole; $parts times the killed one lay beside as .part, written over by the next"
}

# The real window on a display of its own; what a kill left beside is flown again.
faults_fly() {
    local place=$folder/fly file old parts=0 flown=0 k n most=$(((KILLS + 4) / 5))
    mkdir -p "$place"
    file=$place/flight.arrow
    begin 'kill -9, fly --record in the window over an older recording'
    killed=0 within=0
    dotnet exec "$recorder" 20 "$file" >"$folder/said"
    old=$(sum "$file")
    for ((k = 0; k < most; k++)); do
        set -m
        # shellcheck disable=SC2016  # for the shell that becomes the window
        xvfb-run -a bash -c 'echo $$ >"$0"; exec "$@"' "$folder/pid" ${PROGRAM:-dotnet "$library"} fly wagtail pipit --size 320x180 \
            --record "$file" >"$folder/said" 2>&1 &
        set +m
        for ((n = 0; n < 600; n++)); do
            [ -s "$file.part" ] && break
            sleep 0.1
        done
        sleep "$((RANDOM % 4)).$((RANDOM % 10))"
        kill -9 "$(cat "$folder/pid")" && killed=$((killed + 1))
        wait
        tried=$((tried + 1))
        [ "$(sum "$file")" = "$old" ] || broke 'the older recording changed'
        [ -s "$file.part" ] && parts=$((parts + 1))
        if [ $((k % 5)) -eq 0 ] && command -v ffmpeg >/dev/null; then
            SDL_VIDEODRIVER=offscreen simfeel fly --replay "$file.part" --video "$folder/again.mp4" --size 320x180 >"$folder/said" 2>"$folder/complained"
            grep -q 'bit for bit\|bits\|same' "$folder/said" && flown=$((flown + 1)) || broke "a killed recording is not flown again: $(cat "$folder/said" "$folder/complained" | head -c 300)"
        fi
    done
    row "$killed killed; the older recording stood every time, the killed one lay beside $parts times; $flown of them flown again"
}
