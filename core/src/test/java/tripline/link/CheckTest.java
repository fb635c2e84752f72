package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.zip.CRC32C;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The check of frames and lines is the published one: RFC 3720 B.4, and the catalogue's
 * CRC-32/ISCSI.
 */
class CheckTest {
  @ParameterizedTest
  @CsvSource({
    "313233343536373839, e3069283",
    "0000000000000000000000000000000000000000000000000000000000000000, 8a9136aa",
    "ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff, 62a8ab43",
    "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f, 46dd794e",
    "1f1e1d1c1b1a191817161514131211100f0e0d0c0b0a09080706050403020100, 113fdb5c",
    "01c00000000000000000000000000000140000000000040000000014000000182800000000000000"
        + "0200000000000000, d9963a56",
  })
  void castagnoli(String data, String check) {
    CRC32C crc = new CRC32C();
    crc.update(HexFormat.of().parseHex(data));
    assertThat(Long.toHexString(crc.getValue())).isEqualTo(check);
  }
}
