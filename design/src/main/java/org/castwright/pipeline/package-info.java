/**
 * The one place where the order of steps is written: read and heal a model, plan, cut, write the
 * folder aside, prove it from its files, move it into place. {@link
 * org.castwright.pipeline.MoldJob} is the front door; {@link org.castwright.pipeline.Report} is
 * what {@code report.json} holds. Knows nothing of command lines; pictures come from whoever calls.
 */
package org.castwright.pipeline;
