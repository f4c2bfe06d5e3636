package org.seacairn.place;

import java.util.Map;
import java.util.Optional;

/**
 * The answer to a {@link RingRequest}.
 *
 * @param ring empty: none was found
 * @param fit how many modules could be laid where no ring was found; the asked number is within it only
 *     where the work ran out before a ring was found or ruled out
 * @param cells cells between the two distances, those that would lie off the grid among them
 * @param scoredCells those that nothing rules out
 * @param reasons cells for each reason that rules any out, a cell may have several, and with any it has
 *     {@code landing-room}; off the grid it has {@code no-depth}
 */
public record RingResult(
        Optional<Ring> ring, Optional<RingFit> fit, long cells, long scoredCells, Map<String, Long> reasons) {}
