package org.seacairn.place;

import java.util.List;
import org.seacairn.InputException;

/**
 * Which areas are asked for.
 *
 * @param sizes at least one; of two areas alike in everything else the earlier size ranks first
 * @param count how many areas, 1 or more
 * @param blemish the largest share of an area's cells that may be ruled out or without data, 0..1
 */
public record AreaRequest(List<AreaSize> sizes, AreaTurns turns, int count, double blemish) {
    public AreaRequest {
        sizes = List.copyOf(sizes);
        if (sizes.isEmpty()) {
            throw new InputException("no size of an area is given; ask for one, for example 0.25 nmi x 0.25 nmi");
        }
        if (count < 1) {
            throw new InputException("the count of areas is " + count + "; ask for 1 or more");
        }
        if (!(blemish >= 0 && blemish <= 1)) {
            throw new InputException("the blemish of an area is " + blemish + "; state a share of 0 to 1 (0 % to 100 %)");
        }
    }
}
