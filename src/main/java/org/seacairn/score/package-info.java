/** The engine: tiles of depth and layers in, score and reasons out; and what there is to tell of the layers before it runs. */
package org.seacairn.score;
