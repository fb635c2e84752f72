package tripline.bench.peer;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * DuckDB, used as its makers advise: column types stated, the table created first, then every
 * contact compared with the row before by {@code lag} over the row's number. Two threads. Argument:
 * the recording.
 */
public final class DuckDbEdges {
  private static final int CONTACTS = 16;
  private static final int THREADS = 2;

  /** Metadata lines and the header of a made recording. */
  private static final int LINES_BEFORE_ROWS = 3;

  private DuckDbEdges() {}

  /** Counts and prints. */
  public static void main(String[] arguments) throws SQLException {
    String path = Path.of(arguments[0]).toString().replace("'", "''");
    String columns =
        IntStream.rangeClosed(1, CONTACTS)
            .mapToObj(i -> ", 'k%d': 'BOOLEAN'".formatted(i))
            .collect(Collectors.joining("", "'time': 'DOUBLE', 'position': 'DOUBLE'", ""));
    String edges =
        IntStream.rangeClosed(1, CONTACTS)
            .mapToObj(i -> "(k%d <> lag(k%d) over w)::int".formatted(i, i))
            .collect(Collectors.joining(" + "));
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement()) {
      statement.execute("set threads = " + THREADS);
      statement.execute(
          "create table samples as select * from read_csv('%s', header = false, skip = %d, delim = ',', columns = {%s, 'mark': 'VARCHAR'})"
              .formatted(path, LINES_BEFORE_ROWS, columns));
      try (ResultSet result =
          statement.executeQuery(
              "select sum(e) from (select %s as e from samples window w as (order by rowid))"
                  .formatted(edges))) {
        result.next();
        System.out.println(result.getLong(1));
      }
    }
  }
}
