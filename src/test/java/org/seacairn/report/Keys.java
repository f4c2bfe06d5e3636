package org.seacairn.report;

import java.util.LinkedHashMap;
import java.util.Map;

/** Keys of a keyboard as the DevTools protocol wants them pressed: by name, as in {@code KeyboardEvent.key}, or one character. */
final class Keys {
    private static final int SHIFT = 8; // Of Input.dispatchKeyEvent's modifiers.

    private record Key(String key, String code, int virtualCode, String text) {}

    // Virtual key codes from memory; a page sees them as keyCode only, which nothing of ours reads.
    private static final Map<String, Key> NAMED = Map.ofEntries(
            named("Tab", 9, ""), named("Enter", 13, "\r"), named("Escape", 27, ""), named("PageUp", 33, ""), named("PageDown", 34, ""),
            named("End", 35, ""), named("Home", 36, ""), named("ArrowLeft", 37, ""), named("ArrowUp", 38, ""),
            named("ArrowRight", 39, ""), named("ArrowDown", 40, ""), named("Delete", 46, ""), named("Backspace", 8, ""),
            Map.entry("Space", new Key(" ", "Space", 32, " ")));

    private Keys() {}

    private static Map.Entry<String, Key> named(String name, int virtualCode, String text) {
        return Map.entry(name, new Key(name, name, virtualCode, text));
    }

    /** Presses a key and lets it go. @param name such as {@code Enter}, {@code Shift+Tab}, {@code Space}, {@code +} or {@code a} */
    static void press(PageSession session, String name) {
        boolean shift = name.startsWith("Shift+");
        String plain = shift ? name.substring("Shift+".length()) : name;
        Key key = NAMED.get(plain);
        if (key == null && plain.codePointCount(0, plain.length()) != 1) {
            throw new IllegalArgumentException("no such key: " + name);
        }
        if (key == null) {
            key = new Key(plain, "", 0, plain);
        }
        Map<String, Object> down = new LinkedHashMap<>();
        down.put("type", key.text().isEmpty() ? "rawKeyDown" : "keyDown");
        down.put("key", key.key());
        down.put("code", key.code());
        down.put("windowsVirtualKeyCode", key.virtualCode());
        down.put("modifiers", shift ? SHIFT : 0);
        Map<String, Object> up = new LinkedHashMap<>(down);
        up.put("type", "keyUp");
        down.put("text", key.text());
        session.call("Input.dispatchKeyEvent", down);
        session.call("Input.dispatchKeyEvent", up);
    }
}
