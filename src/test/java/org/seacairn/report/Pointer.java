package org.seacairn.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Mouse and fingers: input as the browser gets it from a hand, not events made by a script. */
final class Pointer {
    private static final int STEPS = 5;
    private static final double FINGERS_PX = 100;

    /** The middle of an element's first box, scrolled into sight if it was not; what covers it, if anything does. */
    private static final String SPOT = """
            (selector => {
              const element = document.querySelector(selector);
              if (!element) return { fault: 'no such element' };
              const box = () => element.getClientRects()[0];
              if (!box()) return { fault: 'not displayed' };
              const { top, left, bottom, right } = box();
              if (top < 0 || left < 0 || bottom > innerHeight || right > innerWidth) {
                element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
              }
              const x = box().x + box().width / 2, y = box().y + box().height / 2;
              const hit = document.elementFromPoint(x, y);
              if (!hit) return { fault: 'its middle is out of sight' };
              return element.contains(hit) ? { x, y } : { fault: 'covered by ' + hit.outerHTML.slice(0, 80) };
            })""";

    private record Spot(double x, double y) {}

    private final BrowserPage page;
    private final PageSession session;

    Pointer(BrowserPage page, PageSession session) {
        this.page = page;
        this.session = session;
    }

    private Spot middle(String selector) {
        JsonValue spot = page.evaluate(SPOT + "(" + JsonValue.write(selector) + ")");
        if (!spot.get("fault").isNull()) {
            throw new IllegalStateException(selector + ": " + spot.get("fault").text());
        }
        return new Spot(spot.get("x").number(), spot.get("y").number());
    }

    void click(String selector) {
        drag(selector, 0, 0);
    }

    void drag(String selector, int rightPx, int downPx) {
        Spot from = middle(selector);
        Spot to = new Spot(from.x() + rightPx, from.y() + downPx);
        mouse("mouseMoved", from, Map.of());
        mouse("mousePressed", from, Map.of("button", "left", "buttons", 1, "clickCount", 1));
        for (int step = 1; step <= STEPS && !to.equals(from); step++) {
            Spot at = new Spot(from.x() + (double) rightPx * step / STEPS, from.y() + (double) downPx * step / STEPS);
            mouse("mouseMoved", at, Map.of("button", "left", "buttons", 1));
        }
        mouse("mouseReleased", to, Map.of("button", "left", "clickCount", 1));
    }

    void wheel(String selector, int downPx) {
        mouse("mouseWheel", middle(selector), Map.of("deltaX", 0, "deltaY", downPx));
    }

    void pinch(String selector, double factor) {
        Spot middle = middle(selector);
        touch("touchStart", middle, FINGERS_PX / 2);
        for (int step = 1; step <= STEPS; step++) {
            touch("touchMove", middle, FINGERS_PX / 2 * (1 + (factor - 1) * step / STEPS));
        }
        session.call("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
    }

    private void mouse(String type, Spot at, Map<String, ?> more) {
        Map<String, Object> parameters = new LinkedHashMap<>(more);
        parameters.put("type", type);
        parameters.put("x", at.x());
        parameters.put("y", at.y());
        session.call("Input.dispatchMouseEvent", parameters);
    }

    private void touch(String type, Spot middle, double apartPx) {
        session.call("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", List.of(
                Map.of("x", middle.x() - apartPx, "y", middle.y(), "id", 1),
                Map.of("x", middle.x() + apartPx, "y", middle.y(), "id", 2))));
    }
}
