/** Which cells become sites: the ranked list, its upper bound, its improvement by swaps. */
package org.seacairn.place;
