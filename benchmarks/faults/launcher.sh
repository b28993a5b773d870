# The launcher's first build, killed and started twice; sourced by faults.sh. Slow: some ten builds of a minute or more.

faults_launcher() {
    local tree=$folder/tree builds=${BUILDS:-6} n whole left start killed=0
    begin "the launcher's first build killed, then started again"
    git -c safe.directory='*' -C "$root" archive --prefix=tree/ HEAD | tar -x -C "$folder"
    export SIMFEEL_NO_APT=1 SIMFEEL_PRECOMPILE=off MSBUILDDISABLENODEREUSE=1
    cp -r "${NUGET:-$(getent passwd "$(id -u)" | cut -d: -f6)/.nuget}" "$HOME/.nuget" 2>/dev/null
    start=$(date +%s)
    "$tree/simfeel" weigh wagtail >"$folder/want" 2>"$folder/complained" || broke "the first build fails: $(tail -c 300 "$folder/complained")"
    whole=$(($(date +%s) - start))
    for ((n = 0; n < builds; n++)); do
        rm -rf "$tree/artifacts" "$tree"/src/*/obj "$tree"/src/*/bin
        left=$((2 + RANDOM % whole))
        set -m
        "$tree/simfeel" weigh wagtail >"$folder/said" 2>&1 &
        set +m
        sleep $left
        # every other time the compiler lives on, as it does when only the launcher is ended
        if [ $((n % 2)) -eq 0 ]; then kill -9 -- -$! 2>/dev/null; else kill -9 $! 2>/dev/null; fi
        wait $! 2>/dev/null && say "  it was done after $left s" || killed=$((killed + 1))
        tried=$((tried + 1))
        "$tree/simfeel" weigh wagtail >"$folder/said" 2>"$folder/complained" || broke "after a kill at $left of $whole s: $(tail -c 300 "$folder/complained")"
        cmp -s "$folder/said" "$folder/want" || broke "after a kill at $left of $whole s it says something else"
    done
    row "$killed builds killed; every next start built a program that says the same"

    begin 'two first starts of the launcher at once'
    rm -rf "$tree/artifacts" "$tree"/src/*/obj "$tree"/src/*/bin
    both "'$tree/simfeel' weigh wagtail 2>'$folder/complained'" "'$tree/simfeel' weigh wagtail 2>/dev/null"
    [ "$first$second" = 00 ] || broke "exit codes $first and $second"
    cmp -s "$folder/said1" "$folder/want" && cmp -s "$folder/said2" "$folder/want" || broke 'they say something else'
    row 'the second waits for the first; both say the same'
}
