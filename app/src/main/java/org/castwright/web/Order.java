package org.castwright.web;

import java.nio.file.Path;
import org.castwright.pipeline.JobOptions;
import org.castwright.sheet.SheetOptions;

/** A mold somebody asked for. */
public record Order(Path model, JobOptions options, SheetOptions sheet) {}
