/**
 * Which cells become sites: the ranked list, its upper bound, its improvement by swaps. Which rectangles
 * become candidate permit areas, and how many modules fit into them.
 */
package org.seacairn.place;
