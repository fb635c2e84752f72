/**
 * Bytes of a recording CSV (RFC 4180, UTF-8) to samples.
 *
 * <p>Entry type: {@link tripline.csv.CsvReader}, told by {@link tripline.csv.CsvLayout} how the
 * file is written and by {@link tripline.csv.CsvRequest} which contact channels are wanted. One
 * thread feeds one reader; the sinks are called on that thread.
 *
 * <p>Memory: nothing is allocated per row (marks apart, and numbers of more than nineteen digits
 * whose nearest double the first nineteen do not settle); what is held does not grow with the file:
 * one row that straddles two pieces of input (at most {@value
 * tripline.csv.CsvReader#MOST_ROW_BYTES} bytes), one unquoted cell, the column names and the
 * metadata.
 *
 * <p>Failure: the first thing in the file that is not as it should be ends the reading; every later
 * call gives the same {@link tripline.csv.CsvFault} with its line and column. What was delivered
 * before it is not a recording and must be dropped by the caller. A step back in time is no fault:
 * see {@link tripline.csv.CsvEvents#onStepBack}.
 *
 * <p>Two ways through the rows, with the same result: {@code OrdinaryRows} is the hot path and
 * refuses nothing, it only stops at a row that is not plain; {@code CarefulRow} reads any row and
 * locates what is wrong in it.
 */
@NullMarked
package tripline.csv;

import org.jspecify.annotations.NullMarked;
