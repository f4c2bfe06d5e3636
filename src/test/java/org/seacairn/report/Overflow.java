package org.seacairn.report;

/** Finds what makes a page scroll sideways. */
final class Overflow {
    /** Elements that reach beyond the window's right edge, but for those inside something that scrolls or clips by itself. */
    static final String SCRIPT = """
            (() => {
              const root = document.documentElement;
              const width = root.clientWidth;
              if (root.scrollWidth <= width) return [];
              const contained = e => {
                for (let p = e.parentElement; p && p !== root && p !== document.body; p = p.parentElement) {
                  if (getComputedStyle(p).overflowX !== 'visible') return true;
                }
                return false;
              };
              const found = [...document.body.querySelectorAll('*')]
                .filter(e => e.getBoundingClientRect().right + scrollX > width + 0.5 && !contained(e))
                .map(e => e.tagName.toLowerCase() + (e.id ? '#' + e.id : '') + ' reaches '
                  + Math.round(e.getBoundingClientRect().right + scrollX) + ' of ' + width + ' px');
              return found.length ? found : ['the page is ' + root.scrollWidth + ' of ' + width + ' px wide'];
            })()""";

    private Overflow() {}
}
