/**
 * The command line: a thin face over {@link org.castwright.pipeline.MoldJob}. Parses words into
 * options, shows progress, prints results, turns errors into one sentence and an exit code ({@link
 * org.castwright.cli.Exit}). No geometry here.
 */
package org.castwright.cli;
