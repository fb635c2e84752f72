package tripline.csv;

/**
 * What a reader has met so far.
 *
 * @param rows rows delivered
 * @param repeats rows that read a cell again which another row of the same stamp had read; rows of
 *     one stamp with different cells filled are one moment and not counted
 * @param firstRepeatLine line of the first such row, 0 without one
 * @param stepsBack how often time stepped back
 */
public record CsvSummary(long rows, long repeats, long firstRepeatLine, int stepsBack) {}
