# Sourced by the scripts beside it: runs one job cold and reads what it took.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
castwright="$root/castwright"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
stages=(read heal survey plan parting solids write proof pour pictures total)

# build once, outside the measured runs
"$castwright" --version >/dev/null

# Highest resident memory of a process in kB, watched until it ends.
watch_memory() {
  local peak=0 now
  while now=$(sed -n 's/^VmHWM:[^0-9]*\([0-9]*\).*/\1/p' "/proc/$1/status" 2>/dev/null) && [ -n "$now" ]; do
    peak=$now
    sleep 0.1
  done
  echo "$peak" >"$work/peak"
}

# models_in FOLDER|FILE: sets models.
models_in() {
  models=("$1")
  [ ! -d "$1" ] || models=("$1"/*)
}

# run_job COMMAND ARGUMENTS...: sets code, wall (s) and peak (MB); the mold is in $work/mold.
run_job() {
  rm -rf "$work/mold"
  local begin end
  begin=$(date +%s%N)
  "$castwright" "$@" -o "$work/mold" --quiet >"$work/out" 2>"$work/err" &
  local pid=$!
  watch_memory "$pid"
  code=0
  wait "$pid" || code=$?
  end=$(date +%s%N)
  wall=$(awk -v a="$begin" -v b="$end" 'BEGIN { printf "%.1f", (b - a) / 1e9 }')
  peak=$(awk -v k="$(cat "$work/peak")" 'BEGIN { printf "%.0f", k / 1024 }')
}

# The words for an exit code; a proved mold of a model with catches says so.
result() {
  case $code in
    0) grep -q '"allow_caught" : true' "$work/mold/report.json" \
         && grep -q '"free" : false' "$work/mold/report.json" \
         && echo "proved, catches recorded" || echo proved ;;
    2) echo "refused: bad input" ;;
    3) echo "refused: caught" ;;
    4) echo "**not proved**" ;;
    *) echo "**exit $code**" ;;
  esac
}

# number NAME: the first number of that name in the report, or nothing.
number() {
  [ ! -f "$work/mold/report.json" ] \
    || sed -n 's/^ *"'"$1"'" : \([0-9.]*\),\{0,1\}$/\1/p' "$work/mold/report.json" | head -1
}

# seconds STAGE: from timings_s of the report, or nothing.
seconds() {
  [ ! -f "$work/mold/report.json" ] \
    || sed -n '/"timings_s"/,/}/s/.*"'"$1"'" : \([0-9.]*\).*/\1/p' "$work/mold/report.json"
}

header() {
  echo "| model | triangles | result | $(printf '%s | ' "${stages[@]}")wall s | peak MB |"
  echo "|---|---|---|$(printf '%s' "${stages[@]/*/---|}")---|---|"
}

# row NAME: one line of the table for the job just run.
row() {
  local line s
  line="| $1 | $(number triangles) | $(result) |"
  for s in "${stages[@]}"; do
    line+=" $(seconds "$s") |"
  done
  echo "$line $wall | $peak |"
}

# Date, cores, Java and load, for the head of a table.
conditions() {
  local load="unknown"
  [ ! -r /proc/loadavg ] || load=$(cut -d' ' -f1-3 /proc/loadavg)
  echo "$(date +%F), $(getconf _NPROCESSORS_ONLN) cores, load $load"
  echo
}
