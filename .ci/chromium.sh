# What the checks in a browser need: headless Chromium, and an accessibility checker (axe-core), whose script
# is $checker. To be sourced at the repository's top.

AXE=4.14.1

# Only what is missing is asked for: a machine whose npm came another way refuses Debian's.
missing=()
for program in chromium python3 npm; do
    command -v "$program" >/dev/null || missing+=("$program")
done
if [ "${#missing[@]}" -gt 0 ]; then
    apt-get update
    DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"
fi

# The checker stays outside the repository, and is fetched once.
tools="${XDG_CACHE_HOME:-$HOME/.cache}/festoon-ci/axe-core-$AXE"
checker="$tools/node_modules/axe-core/axe.min.js"
[ -s "$checker" ] || npm install --prefix "$tools" --no-save --ignore-scripts --no-audit --no-fund "axe-core@$AXE"
