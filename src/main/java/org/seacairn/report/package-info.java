/** The report page, and the styles that its map is drawn with. */
package org.seacairn.report;
