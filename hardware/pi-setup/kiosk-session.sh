#!/bin/sh
# The browser of the bench screen, full screen, inside the compositor. Started by spurwise-kiosk.service.
set -eu
browser=$(command -v chromium || command -v chromium-browser)
profile=${RUNTIME_DIRECTORY:-/run/spurwise-kiosk}

set -- --kiosk --app="http://127.0.0.1:${SPURWISE_PORT:-4710}/"
# Nothing of the browser outlasts a start, and nothing of it asks anything.
set -- "$@" --user-data-dir="$profile/profile" --disk-cache-dir="$profile/cache" --disk-cache-size=10485760
set -- "$@" --no-first-run --no-default-browser-check --noerrdialogs --disable-session-crashed-bubble
set -- "$@" --password-store=basic --disable-sync --disable-component-update --disable-breakpad
# No pinch, no swipe back from an edge, no translation bar.
set -- "$@" --disable-pinch --overscroll-history-navigation=0
set -- "$@" --disable-features=OverscrollHistoryNavigation,TouchpadOverscrollHistoryNavigation,Translate
set -- "$@" --ozone-platform=wayland --touch-events=enabled
exec "$browser" "$@"
