package org.castwright.trial;

import java.util.List;

/**
 * What to do about a note.
 *
 * @param note index of the note answered
 * @param changes of options, best first; empty where no option helps
 * @param because why, in sentences
 * @param advice what to do at the bench, may be empty
 * @param source of the rule behind it
 */
public record Answer(
    int note, List<Change> changes, String because, List<String> advice, String source) {}
