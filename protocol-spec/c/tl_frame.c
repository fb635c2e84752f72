/* Check and stuffing (SPEC 2). */
#include "tl_tables.h"

uint32_t tl_check(const uint8_t *data, size_t length) {
  /* Remainders of the sixteen four-bit values: 64 bytes of table, two steps a byte. */
  static const uint32_t nibble[16] = {
      0x00000000u, 0x105ec76fu, 0x20bd8edeu, 0x30e349b1u, 0x417b1dbcu, 0x5125dad3u,
      0x61c69362u, 0x7198540du, 0x82f63b78u, 0x92a8fc17u, 0xa24bb5a6u, 0xb21572c9u,
      0xc38d26c4u, 0xd3d3e1abu, 0xe330a81au, 0xf36e6f75u};
  uint32_t crc = 0xffffffffu;
  for (size_t i = 0; i < length; i++) {
    crc ^= data[i];
    crc = crc >> 4 ^ nibble[crc & 15u];
    crc = crc >> 4 ^ nibble[crc & 15u];
  }
  return crc ^ 0xffffffffu;
}

size_t tl_stuff(const uint8_t *data, size_t length, uint8_t *out) {
  size_t code_at = 0;
  size_t to = 1;
  uint8_t code = 1;
  for (size_t i = 0; i < length; i++) {
    if (data[i] != 0) {
      out[to++] = data[i];
      code++;
    }
    if (data[i] == 0 || (code == 0xff && i + 1 < length)) {
      out[code_at] = code;
      code_at = to++;
      code = 1;
    }
  }
  out[code_at] = code;
  return to;
}

size_t tl_unstuff(const uint8_t *wire, size_t length, uint8_t *out) {
  size_t at = 0;
  size_t written = 0;
  while (at < length) {
    uint8_t code = wire[at];
    if (code == 0 || code > length - at) {
      return (size_t)-1;
    }
    for (size_t i = 1; i < code; i++) {
      out[written++] = wire[at + i];
    }
    at += code;
    if (code != 0xff && at < length) {
      out[written++] = 0;
    }
  }
  return written;
}

size_t tl_write_frame(const uint8_t *body, size_t length, uint8_t *out) {
  uint8_t data[TL_MOST_BODY + 4];
  memcpy(data, body, length);
  tl_put(data + length, tl_check(body, length), 4);
  size_t written = tl_stuff(data, length + 4, out);
  out[written] = 0;
  return written + 1;
}
