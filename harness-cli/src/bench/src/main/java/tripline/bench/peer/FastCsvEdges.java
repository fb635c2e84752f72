package tripline.bench.peer;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;

/** FastCSV, {@code Double.parseDouble} and a naive edge finder. Argument: the recording. */
public final class FastCsvEdges {
  private static final int CONTACTS = 16;
  private static final int FIRST_CONTACT = 2;

  private FastCsvEdges() {}

  /** Counts and prints. */
  public static void main(String[] arguments) throws IOException {
    long edges = 0;
    double sum = 0;
    long before = -1;
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder()
            .allowUnclosedQuote(false)
            .commentStrategy(CommentStrategy.SKIP)
            .build(CsvRecordHandler.of(), Path.of(arguments[0]))) {
      Iterator<CsvRecord> rows = reader.iterator();
      rows.next();
      while (rows.hasNext()) {
        CsvRecord row = rows.next();
        sum += Double.parseDouble(row.getField(0)) + Double.parseDouble(row.getField(1));
        long closed = 0;
        for (int i = 0; i < CONTACTS; i++) {
          closed |= row.getField(FIRST_CONTACT + i).equals("1") ? 1L << i : 0;
        }
        edges += before < 0 ? 0 : Long.bitCount(closed ^ before);
        before = closed;
      }
    }
    if (Double.isNaN(sum)) {
      throw new IllegalStateException("a number is none");
    }
    System.out.println(edges);
  }
}
