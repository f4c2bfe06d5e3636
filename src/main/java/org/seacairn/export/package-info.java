/** One writer a format. */
package org.seacairn.export;
