/**
 * The record of a check, to look at, print and sign: one self-contained HTML page, or the same page
 * as PDF.
 *
 * <p>Entry: {@link tripline.harness.report.record.RecordFile}. The page is well-formed XML without
 * script and without anything fetched. All text from sheets, recordings and results is made
 * harmless and escaped. Nothing here is loaded unless a record is asked for. Stateless; any thread;
 * a page lives in memory whole while it is written (some hundred kilobytes for a dozen strokes).
 */
@NullMarked
package tripline.harness.report.record;

import org.jspecify.annotations.NullMarked;
