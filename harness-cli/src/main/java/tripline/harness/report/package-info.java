/**
 * Answers for people and for programs: text drawings, the result file, records to sign.
 *
 * <p>Text entry: {@link tripline.harness.report.ChartText}; drawings of travel within it are rows
 * of a {@link tripline.harness.report.TravelScale}, so that what was intended and what was found
 * stand on one scale. Result file entry: {@link tripline.harness.report.ResultJson}. Nothing here
 * decides anything. Stateless; any thread; memory grows with what is written only.
 */
@NullMarked
package tripline.harness.report;

import org.jspecify.annotations.NullMarked;
