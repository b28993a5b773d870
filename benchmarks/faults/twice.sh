# Two at once, sourced by faults.sh.

# Runs two commands at the same moment and sets first and second to their exit codes; said1, said2 hold what they said.
both() {
    local one two
    eval "$1" >"$folder/said1" 2>&1 &
    one=$!
    eval "$2" >"$folder/said2" 2>&1 &
    two=$!
    wait $one
    first=$?
    wait $two
    second=$?
    tried=$((tried + 1))
}

faults_twice() {
    local d=$folder/twice n want refused=0 first second many=$(((KILLS + 9) / 10)) rows
    local vary='--vary motor.volume=0.8..1.6 --vary battery.mass=0.8..1.4 --metric stop_time --samples 600'
    begin 'two sweeps into the same file at once'
    mkdir -p "$d"
    simfeel sweep wagtail $vary --out "$d/want.csv" >"$folder/said" 2>&1
    want=$(sum "$d/want.csv")
    for ((n = 0; n < many; n++)); do
        rm -f "$d/s.csv"
        both "simfeel sweep wagtail $vary --out '$d/s.csv'" "simfeel sweep wagtail $vary --out '$d/s.csv'"
        [ "$(sum "$d/s.csv")" = "$want" ] || broke 'the result differs'
        case $first$second in
            00) ;;
            03 | 30)
                refused=$((refused + 1))
                grep -q 'Another sweep works on' "$folder/said1" "$folder/said2" || broke 'a refusal does not say why'
                ;;
            *) broke "exit codes $first and $second: $(cat "$folder/said1" "$folder/said2" | head -c 300)" ;;
        esac
        [ "$(strangers "$d" want.csv s.csv)" -eq 0 ] || broke 'files are left'
    done
    row "the right bytes every time; one of the two was refused $refused times in one line, else they came one after the other"

    begin 'two compares with an empty cache and one sheet at once'
    simfeel compare wagtail pipit --sheet "$d/want.json" >"$folder/said" 2>&1
    want=$(sum "$d/want.json")
    for ((n = 0; n < (many + 4) / 5; n++)); do
        rm -rf "$d/cache" "$d/s.json"
        both "SIMFEEL_CACHE='$d/cache' simfeel compare wagtail pipit --sheet '$d/s.json'" "SIMFEEL_CACHE='$d/cache' simfeel compare wagtail pipit --sheet '$d/s.json'"
        [ "$first$second" = 00 ] || broke "exit codes $first and $second"
        [ "$(sum "$d/s.json")" = "$want" ] || broke 'the sheet differs'
        [ -z "$(find "$d/cache" -name '.simfeel*')" ] || broke 'unfinished tables are left'
        cmp -s "$folder/said1" "$folder/said2" || broke 'the two say different things'
    done
    row 'both right, the sheet whole, nothing left in the cache'

    begin 'two that add to one class log at once'
    for ((n = 0; n < many; n++)); do
        both "simfeel lesson size --hands 1,2,3,4,5 --log '$d/class.csv'" "simfeel lesson size --hands 5,4,3,2,1 --log '$d/class.csv'"
        [ "$first$second" = 00 ] || broke "exit codes $first and $second: $(cat "$folder/said1" "$folder/said2" | head -c 300)"
    done
    rows=$(($(wc -l <"$d/class.csv") - 1))
    [ "$rows" -eq $((many * 10)) ] || broke "$rows rows, not $((many * 10))"
    [ "$(grep -c '^date,' "$d/class.csv")" -eq 1 ] || broke 'more than one header'
    row "$rows rows, one header"

    begin 'two recordings into one file at once'
    refused=0
    for ((n = 0; n < many; n++)); do
        both "dotnet exec '$recorder' 20 '$d/f.arrow'" "dotnet exec '$recorder' 20 '$d/f.arrow'"
        is_whole "$d/f.arrow" || broke 'the recording is not whole'
        case $first$second in
            00) ;;
            01 | 10)
                refused=$((refused + 1))
                grep -q 'Nothing is recorded: .*used by another process' "$folder/said1" "$folder/said2" || broke 'a refusal does not say why'
                ;;
            *) broke "exit codes $first and $second" ;;
        esac
        [ ! -e "$d/f.arrow.part" ] || broke 'a .part is left'
    done
    row "one of them is whole every time; the other one was told $refused times that nothing is recorded, else they came one after the other"
}
