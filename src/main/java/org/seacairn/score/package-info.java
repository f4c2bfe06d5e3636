/** The engine: tiles of depth and layers in, score and reasons out. */
package org.seacairn.score;
