/**
 * The job sheet for printing: {@code sheet.pdf}, two to four pages to hang in the workshop. Accepts
 * a finished report, the files it names and pictures from {@code pictures}; promises the same bytes
 * for the same input. It measures nothing of its own and leaves out what the report does not hold.
 */
package org.castwright.sheet;
