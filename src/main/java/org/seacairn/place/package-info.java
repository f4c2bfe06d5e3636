/** Which cells become sites, which rectangles areas: the ranked list, its upper bound, its improvement by swaps; candidate permit areas and how many modules fit. */
package org.seacairn.place;
