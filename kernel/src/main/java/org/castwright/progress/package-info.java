/**
 * How work goes on for whoever asked for it: one small interface by which it tells how far it is
 * and learns that it should stop, passed down to it, and work that is done beside other work.
 * Promises nothing about threads but that any may call; knows nothing of what the work is.
 */
package org.castwright.progress;
