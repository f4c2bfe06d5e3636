package org.seacairn.export;

/**
 * What one reason ruled out.
 *
 * @param bit its value in the mask, 1, 2, 4 …
 * @param cells ruled out by it, whatever else rules them out
 * @param km2 their area
 * @param aloneCells ruled out by nothing else
 */
public record ReasonCount(String reason, long bit, long cells, double km2, long aloneCells) {}
