/** The types that every part of the house shares. */
package org.seacairn;
