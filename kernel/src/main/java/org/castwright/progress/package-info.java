/**
 * How long work tells how far it is and learns that it should stop: one small interface, passed
 * down from whoever asked for the work. Promises nothing about threads but that any may call it;
 * knows nothing of what the work is.
 */
package org.castwright.progress;
