package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class GlyphsTest {
  @Test
  void theLocaleDecidesUnlessTheEnvironmentDoes() {
    assertThat(Glyphs.of(Map.of(), "UTF-8")).isEqualTo(Glyphs.UNICODE);
    assertThat(Glyphs.of(Map.of(), "ANSI_X3.4-1968")).isEqualTo(Glyphs.ASCII);
    assertThat(Glyphs.of(Map.of(), "ISO-8859-1")).isEqualTo(Glyphs.ASCII);
    assertThat(Glyphs.of(Map.of(), null)).isEqualTo(Glyphs.ASCII);
    assertThat(Glyphs.of(Map.of(), "no such encoding")).isEqualTo(Glyphs.ASCII);
    assertThat(Glyphs.of(Map.of("TRIPLINE_ASCII", "1"), "UTF-8")).isEqualTo(Glyphs.ASCII);
    assertThat(Glyphs.of(Map.of("TRIPLINE_ASCII", "0"), "US-ASCII")).isEqualTo(Glyphs.UNICODE);
    assertThat(Glyphs.of(Map.of("TRIPLINE_ASCII", ""), "UTF-8")).isEqualTo(Glyphs.UNICODE);
  }

  @Test
  void aTextIsFittedAndShowsThatItWasCut() {
    assertThat(Glyphs.UNICODE.fit("close", 7)).isEqualTo("close  ");
    assertThat(Glyphs.UNICODE.fit("close", 5)).isEqualTo("close");
    assertThat(Glyphs.UNICODE.fit("close", 4)).isEqualTo("clo…");
    assertThat(Glyphs.ASCII.fit("close", 4)).isEqualTo("clo~");
  }

  @Test
  void figuresAreShortAndWrappedTextKeepsThem() {
    assertThat(Figures.text(0.30000000000000004)).isEqualTo("0.3");
    assertThat(Figures.text(12345.6)).isEqualTo("12350");
    assertThat(Figures.text(-0.0)).isEqualTo("0");
    assertThat(Wrapped.lines("  covers 1.613 % so", 15, "    "))
        .containsExactly("  covers", "    1.613 % so");
    assertThat(Wrapped.lines("aaaaaaaaaa bb", 5, "")).containsExactly("aaaaaaaaaa", "bb");
  }
}
