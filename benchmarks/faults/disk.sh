# Full disks, folders that can only be read, things in the way; sourced by faults.sh.

# Mounts a small file system. Arguments: folder, options.
mount_small() {
    mkdir -p "$1"
    mount -t tmpfs -o "$2" tmpfs "$1" || { broke "cannot mount $1: this campaign needs root"; return 1; }
    mounts="$mounts $1"
}

# Fills what is left of a file system.
fill() { cat /dev/zero >"$1/filler" 2>"$folder/complained"; true; }

# A command whose output file finds no room: one line, 3, the good file stays, nothing is left beside.
no_room() {
    local file=$1
    shift
    printf 'good\n' >"$file"
    fill "${file%/*}"
    expect 3 'No space left on device' "$@"
    [ "$(cat "$file")" = good ] || broke "$file is no longer the good one"
    [ "$(strangers "${file%/*}" "${file##*/}" filler)" -eq 0 ] || broke "something is left beside $file"
    rm -f "${file%/*}/filler" "$file"
}

faults_disk() {
    local d=$folder/full csv=$root/assets/bench/wagtail-stand.csv kept blocks=0
    begin 'a full disk under sheets, builds, worksheets, pictures, logs'
    mount_small "$d" size=64k || return
    no_room "$d/a.html" simfeel bench wagtail --worksheet "$d/a.html" --force
    no_room "$d/a.toml" simfeel fit "$csv" --build wagtail --out "$d/a.toml" --force
    no_room "$d/a.html" simfeel compare wagtail pipit --sheet "$d/a.html"
    no_room "$d/a.html" simfeel lesson size --sheet "$d/a.html"
    no_room "$d/rotor.png" simfeel validate --plots "$d"
    simfeel lesson size --hands 1,2,3,4,5 --log "$d/class.csv" >"$folder/said" 2>&1
    kept=$(sum "$d/class.csv")
    fill "$d"
    for _ in {1..20}; do simfeel lesson size --hands 1,2,3,4,5 --log "$d/class.csv" >"$folder/said" 2>"$folder/complained" || break; done
    grep -q 'No space left' "$folder/complained" || broke 'a full log is not told of'
    [ "$(tail -c 1 "$d/class.csv" | od -An -tx1 | tr -d ' ')" = 0a ] || broke 'the log ends in half a line'
    rm -f "$d"/*
    row 'each a single line with the reason and exit code 3; the good file stayed, nothing beside it; a log ends with a whole line'

    begin 'a full disk under a sweep, a recording, home and the output'
    expect 3 'the same command goes on from there' simfeel sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 \
        --metric stop_time,climb_in_1_s,hover_endurance --samples 8000 --out "$d/s.csv"
    umount "$d" && mount_small "$d" size=4m
    simfeel sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --metric stop_time --samples 1000 --out "$d/s.csv" >"$folder/said" 2>&1
    kept=$(sum "$d/s.csv")
    fill "$d"
    truncate -s -20k "$d/filler"
    expect 3 'the same command goes on from there' simfeel sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 \
        --metric stop_time --samples 1000 --out "$d/s.csv" --fresh
    [ "$(sum "$d/s.csv")" = "$kept" ] || broke 'the good result of a sweep is gone'
    rm "$d/filler"
    simfeel sweep wagtail --vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --metric stop_time --samples 1000 --out "$d/s.csv" >"$folder/said" 2>"$folder/complained"
    tried=$((tried + 1))
    grep -q '^Going on with' "$folder/complained" && blocks=1 || broke 'a sweep that met a full disk does not go on'
    [ "$(sum "$d/s.csv")" = "$kept" ] || broke 'after a full disk a sweep ends with other bytes'
    fill "$d"
    dotnet exec "$recorder" 20 "$d/flight.arrow" >"$folder/said" 2>"$folder/complained"
    tried=$((tried + 1))
    grep -q 'cannot be written\|The recording ended after' "$folder/said" || broke 'a recording does not tell of the full disk'
    expect 0 '' env HOME="$d" XDG_CACHE_HOME="$d" SIMFEEL_CACHE="$d/cache" $(command_words) compare wagtail pipit
    tried=$((tried + 1))
    simfeel weigh wagtail >/dev/full 2>"$folder/complained"
    [ $? -eq 3 ] && [ "$(wc -l <"$folder/complained")" -eq 1 ] || broke 'a full output is no single line with exit code 3'
    simfeel weigh wagtail --json >/dev/full 2>&1
    [ $? -eq 3 ] || broke 'nowhere to write at all does not end with 3'
    rm -rf "$d"/*
    row "blocks that fitted were kept and gone on from ($blocks), results stayed; a cache that cannot be kept does no harm; a full output ends with 3"
}

# The program as words, for env and setpriv.
command_words() { if [ -n "${PROGRAM:-}" ]; then printf '%s' "$PROGRAM"; else printf 'dotnet %s' "$library"; fi; }

faults_places() {
    local d=$folder/readonly csv=$root/assets/bench/wagtail-stand.csv
    begin 'a folder that can only be read'
    mount_small "$d" size=2m || return
    mkdir "$d/cache"
    printf 'good\n' | tee "$d/a.html" "$d/a.toml" "$d/s.csv" "$d/class.csv" >"$d/votes.csv"
    dotnet exec "$recorder" 5 "$d/flight.arrow" >"$folder/said"
    mount -o remount,ro "$d"
    expect 3 'Read-only file system' simfeel bench wagtail --worksheet "$d/a.html" --force
    expect 3 'Read-only file system' simfeel fit "$csv" --build wagtail --out "$d/a.toml" --force
    expect 3 'Read-only file system' simfeel compare wagtail pipit --sheet "$d/a.html"
    expect 3 'Read-only file system' simfeel sweep wagtail --vary motor.volume=0.8..1.6 --metric stop_time --out "$d/s.csv"
    expect 3 'Read-only file system' simfeel lesson size --hands 1,2,3,4,5 --log "$d/class.csv"
    expect 3 'Read-only file system' simfeel validate --plots "$d"
    expect 0 '' env SIMFEEL_CACHE="$d/cache" $(command_words) compare wagtail pipit
    dotnet exec "$recorder" 5 "$d/flight.arrow" >"$folder/said"
    tried=$((tried + 1))
    grep -q 'Nothing is recorded: .*Read-only file system' "$folder/said" || broke 'a recording does not tell of a folder that can only be read'
    row 'each a single line with the reason and exit code 3; a cache there is read and not written'

    begin 'another user without rights; things in the way'
    d=$folder/way
    mkdir -p "$d/theirs" "$d/is-folder.html" "$d/is-folder.csv"
    printf 'good\n' >"$d/file"
    printf 'good\n' >"$d/theirs/a.html"
    printf 'good\n' >"$d/kept.html"
    chmod 444 "$d/kept.html"
    expect 3 'protected against writing' simfeel bench wagtail --worksheet "$d/kept.html" --force
    expect 1 'is a folder' simfeel compare wagtail pipit --sheet "$d/is-folder.html"
    expect 1 'is a folder' simfeel sweep wagtail --vary motor.volume=0.8..1.6 --out "$d/is-folder.csv"
    expect 1 'there is no folder' simfeel compare wagtail pipit --sheet "$d/file/a.html"
    expect 1 'There is no folder' simfeel sweep wagtail --vary motor.volume=0.8..1.6 --out "$d/none/a.csv"
    expect 1 'cannot be made' simfeel validate --plots "$d/file"
    expect 0 '' env HOME="$d/file" XDG_CACHE_HOME="$d/file" SIMFEEL_CACHE="$d/file" $(command_words) compare wagtail pipit
    mkdir "$d/s.csv.part"
    expect 3 's.csv.part' simfeel sweep wagtail --vary motor.volume=0.8..1.6 --out "$d/s.csv"
    chmod 711 "$folder"
    chmod 755 "$d" "$d/theirs"
    if [ "$(id -u)" -eq 0 ] && command -v setpriv >/dev/null; then
        mkdir "$d/nobody" && chmod 777 "$d/nobody"
        expect 3 'denied' setpriv --reuid=65534 --regid=65534 --clear-groups env HOME="$d/nobody" DOTNET_CLI_HOME="$d/nobody" \
            $(command_words) bench wagtail --worksheet "$d/theirs/a.html" --force
    fi
    [ "$(cat "$d/theirs/a.html" "$d/kept.html" "$d/file" | sort -u)" = good ] || broke 'a file was changed'
    row 'each one line that names the place; nothing in the way was changed'
}
