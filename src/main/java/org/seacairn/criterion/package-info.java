/** One class a criterion: its raw measure, its reasons and its suitability, tile by tile. */
package org.seacairn.criterion;
