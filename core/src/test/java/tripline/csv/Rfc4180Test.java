package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * RFC 4180 clause 2, rule by rule, on recordings. The mark column shows what a text cell holds; the
 * pairs of quoted text and meaning are those of the csv-spectrum collection (BSD-2-Clause).
 */
class Rfc4180Test {
  @Test
  void rule1And2RecordsEndWithCrLfTheLastMayLackIt() {
    assertThat(marks("time,position,mark\r\n0,1,aaa\r\n1,1,zzz\r\n")).containsExactly("aaa", "zzz");
    assertThat(marks("time,position,mark\r\n0,1,aaa\r\n1,1,zzz")).containsExactly("aaa", "zzz");
  }

  @Test
  void rule3TheHeaderNamesFieldsLikeAnyOtherRecord() {
    Calls calls = Calls.of("\"time\",\"position\",\"field \"\"3\"\"\"\n0,1,2\n");
    assertThat(calls.header().columns()).containsExactly("time", "position", "field \"3\"");
  }

  /** Rule 4: same number of fields throughout; blanks are part of a field; no trailing comma. */
  @Test
  void rule4EveryRecordHasTheSameNumberOfFields() {
    assertThat(fault("time,position,mark\n0,1,\n0,1\n")).startsWith("3:4: row of 2 cells");
    assertThat(fault("time,position,mark\n0,1,,\n")).startsWith("2:6: row of 4 cells");
    assertThat(marks("time,position,mark\n0,1,a  b\n")).containsExactly("a  b");
  }

  @Test
  void rule5FieldsMayBeQuotedAndMustNotHoldQuotesOtherwise() {
    assertThat(marks("time,position,mark\r\n\"0\",\"1\",\"aaa\"\r\n1,1,zzz\r\n"))
        .containsExactly("aaa", "zzz");
    assertThat(fault("time,position,mark\n0,1,b\"b\n")).startsWith("2:6: quotation mark inside");
  }

  @Test
  void rule6QuotedFieldsMayHoldLineBreaksAndCommas() {
    Calls calls = Calls.of("time,position,mark\r\n0,1,\"b \r\nb,b\"\r\n1,x,\r\n");
    assertThat(calls.said).contains("0 NOTE 'b   b,b'");
    assertThat(calls.fault.orElseThrow().line()).isEqualTo(4);
  }

  @Test
  void rule7AQuoteInsideAQuotedFieldIsDoubled() {
    assertThat(marks("time,position,mark\n0,1,\"b\"\"bb\"\n1,1,\"ha \"\"ha\"\" ha\"\n"))
        .containsExactly("b\"bb", "ha \"ha\" ha");
    assertThat(fault("time,position,mark\n0,1,\"b\"b\n")).startsWith("2:8: text after the closing");
  }

  @Test
  void emptyQuotedFieldsTextBeyondAsciiAndJsonInAField() {
    assertThat(
            marks(
                """
                time,position,mark
                0,"",""
                1,1,ʤ
                2,1,"{""type"": ""Point"", ""coordinates"": [102.0, 0.5]}"
                """))
        .containsExactly("ʤ", "{\"type\": \"Point\", \"coordinates\": [102.0, 0.5]}");
  }

  private static List<String> marks(String text) {
    Calls calls = Calls.of(text);
    assertThat(calls.fault).isEmpty();
    return calls.said.stream()
        .filter(s -> s.contains("'"))
        .map(s -> s.substring(s.indexOf('\'') + 1, s.length() - 1))
        .toList();
  }

  private static String fault(String text) {
    CsvFault fault = Calls.of(text).fault.orElseThrow();
    return fault.line() + ":" + fault.column() + ": " + fault.message();
  }
}
