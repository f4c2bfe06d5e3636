/** Layers as the rest of the house sees them, and one reader a format. */
package org.seacairn.layer;
