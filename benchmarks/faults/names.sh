# Names, paths and languages, sourced by faults.sh.

faults_names() {
    local d=$folder/names name locale file want n=0 csv=$root/assets/bench/wagtail-stand.csv
    local names=('Größe und Übermut' '翼展 很长' 'طُولٌ ذِرَاع' '🚁 rotor 🪁' "it's \"quoted\"" '-rf' $'two\nlines' $'not \xff utf8' '<b>&amp;<i>' 'שלום 5" x 4.3')
    begin 'folders and files with umlauts, Chinese, Arabic with marks, pictures, blanks, quotes, a dash in front, line ends, bytes that are no UTF-8'
    mkdir -p "$d"
    for name in "${names[@]}"; do
        mkdir -p "$d/$name"
        file=$d/$name/$name.toml
        cp "$root/assets/builds/wagtail.toml" "$file"
        if [[ $name == *$'\xff'* ]]; then
            # .NET cannot name such a file: it must say so, and touch nothing
            expect 1 '' simfeel weigh "$file"
            continue
        fi
        expect 0 '' simfeel weigh "$file"
        expect 0 '' simfeel fit "$csv" --build "$file" --out "$d/$name/copy $name.toml"
        expect 0 '' simfeel weigh "$d/$name/copy $name.toml"
        expect 0 '' simfeel bench "$file" --worksheet "$d/$name/$name.html" --template "$d/$name/bench $name.toml"
        expect 0 '' simfeel sweep "$file" --vary motor.volume=0.8..1.6 --metric hover_power --out "$d/$name/$name.csv"
        (cd "$d/$name" && simfeel sweep "./$name.toml" --vary motor.volume=0.8..1.6 --metric hover_power --out="./$name 2.csv") >"$folder/said" 2>&1
        tried=$((tried + 1))
        cmp -s "$d/$name/$name.csv" "$d/$name/$name 2.csv" || broke "$name: the same sweep from within the folder differs"
        [ "$(strangers "$d/$name" "$name.toml" "copy $name.toml" "$name.html" "bench $name.toml" "$name.csv" "$name 2.csv")" -eq 0 ] || broke "$name: strange files"
    done
    SIMFEEL_CACHE="$d/Größe طُول/cache" simfeel weigh wagtail >"$folder/said" 2>&1 || broke 'a cache with such a name'
    row 'builds, fits, worksheets, sweeps and caches there; what is no UTF-8 is refused in a line'

    begin 'builds with such names on the sheet: escaped, each name a direction of its own'
    for name in "${names[@]}"; do
        if [[ $name == *$'\xff'* || $name == *$'\n'* ]]; then continue; fi
        n=$((n + 1))
        python3 - "$root/assets/builds/wagtail.toml" "$d/a.toml" "$name" <<'P'
import json, re, sys
text = open(sys.argv[1], encoding='utf-8').read()
open(sys.argv[2], 'w', encoding='utf-8').write(re.sub(r'(?m)^name = .*$', lambda m: 'name = ' + json.dumps(sys.argv[3], ensure_ascii=False), text, count=1))
P
        expect 0 '' simfeel compare "$d/a.toml" curlew --sheet "$d/sheet-$n.html"
        tried=$((tried + 1))
        python3 "$root/benchmarks/faults/page.py" "$d/sheet-$n.html" "$name" >"$folder/said" 2>&1 || broke "$name: $(cat "$folder/said")"
    done
    [ -z "${KEEP:-}" ] || cp "$d"/sheet-*.html "$KEEP"
    row "$n pages parsed: the name stands in the text whole, no element comes from it"

    begin 'languages: C, de_DE, ar_EG, fa_IR, he_IL, tr_TR, as the system has them'
    for locale in C de_DE.UTF-8 ar_EG.UTF-8 fa_IR he_IL.UTF-8 tr_TR.UTF-8; do
        locale -a | grep -qix "${locale%.UTF-8}\(\.utf8\)\?" || { broke "the system has no $locale (package locales, /etc/locale.gen, locale-gen)"; continue; }
        expect 0 '' env LANG=$locale LC_ALL=$locale $(command_words) compare wagtail pipit --sheet "$d/l.html" --json
        cat "$folder/said" "$d/l.html" >"$folder/all"
        expect 0 '' env LANG=$locale LC_ALL=$locale $(command_words) sweep wagtail --vary motor.volume=0.75..1.25/3 --metric hover_power --out "$d/l.csv"
        cat "$folder/said" "$d/l.csv" >>"$folder/all"
        expect 0 '' env LANG=$locale LC_ALL=$locale $(command_words) fit "$csv" --build wagtail --out "$d/l.toml" --force
        cat "$folder/said" "$d/l.toml" >>"$folder/all"
        [ $locale != C ] || want=$(sum "$folder/all")
        [ "$(sum "$folder/all")" = "$want" ] || broke "$locale prints other bytes than C"
    done
    expect 2 "--vary is 'motor.volume=0,8..1,6'" simfeel sweep wagtail --vary motor.volume=0,8..1,6
    expect 2 "it must be a number" simfeel compare wagtail pipit --effort 0,5
    # the invented stand has decimal commas and semicolons; the same table as other programs would store it
    mkdir -p "$d/point" "$d/tab" "$d/spreadsheet" "$d/both"
    tr ',;' '.,' <"$csv" >"$d/point/${csv##*/}"
    tr ';' '\t' <"$csv" >"$d/tab/${csv##*/}"
    { printf '\xef\xbb\xbf' && sed 's/$/\r/' "$csv"; } >"$d/spreadsheet/${csv##*/}"
    for name in point tab spreadsheet; do
        expect 0 '' env LC_ALL=de_DE.UTF-8 $(command_words) fit "$d/$name/${csv##*/}" --build wagtail --out "$d/$name/l.toml"
        cmp -s "$d/$name/l.toml" "$d/l.toml" || broke "$name: another fit than that of decimal commas and semicolons"
    done
    tr ';' ',' <"$csv" >"$d/both/${csv##*/}"
    expect 1 'commas seem to divide cells and be decimal marks as well' simfeel fit "$d/both/${csv##*/}" --build wagtail
    row 'the same bytes on screen, page, table and build file; stand tables with decimal commas or points, semicolons, commas or tabs give the same fit, commas for both are refused; a decimal comma where a point belongs is refused in a line'
}
