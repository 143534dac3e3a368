/**
 * The trial log: what happened in a test cast, and what to change. Accepts notes with places and
 * measured lengths, and the facts of the mold that was cast; promises one reasoned {@link
 * org.castwright.trial.Answer} to each note, with the change of an option where one helps and plain
 * advice where none does. Keeps the maker's own readings of material and printer ({@link
 * org.castwright.trial.Calibration}) and works out shrink by least squares with its spread, and the
 * gap of keys from a ladder of fits. Knows nothing of planning: who applies a change looks up what
 * its name means. Reads and writes no files.
 */
package org.castwright.trial;
