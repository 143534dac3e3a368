/** How long work tells how far it is and learns that it should stop. */
package org.castwright.progress;
