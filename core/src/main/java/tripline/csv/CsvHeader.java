package tripline.csv;

import java.util.List;

/**
 * A recording up to and with its header.
 *
 * @param metadata its metadata
 * @param columns all column names, as written, in their order
 * @param ignored the columns nobody asked for; one without a name is given by its number
 * @param absent optional channels that have no column
 */
public record CsvHeader(
    CsvMetadata metadata, List<String> columns, List<String> ignored, List<String> absent) {
  public CsvHeader {
    columns = List.copyOf(columns);
    ignored = List.copyOf(ignored);
    absent = List.copyOf(absent);
  }
}
