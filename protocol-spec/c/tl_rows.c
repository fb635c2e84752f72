/* The rows of samples (SPEC 5, 04): widths, packing, unpacking. */
#include "tl_tables.h"

tl_widths tl_widths_of(uint8_t form) {
  static const uint8_t widths[] = {0, 1, 2, 4, 8, 0, 0, 0};
  tl_widths w = {widths[form & 3u], widths[form >> 2 & 7u], 2u * (form >> 5 & 3u)};
  return w;
}

/* Two's complement of a 32-bit pattern, without relying on how the compiler converts. */
static int32_t signed32(uint32_t bits) {
  return bits < 0x80000000u ? (int32_t)bits : (int32_t)(bits - 0x80000000u) - 0x7fffffff - 1;
}

void tl_pack_begin(tl_pack *pack, uint32_t period, uint64_t known) {
  memset(pack, 0, sizeof *pack);
  pack->period = period;
  pack->known = known;
  pack->widths.gap = period == 0 ? 2 : 0;
}

void tl_pack_row(tl_pack *pack, const tl_row *row) {
  uint64_t levels = row->levels & pack->known;
  if (pack->rows == 0) {
    pack->first_levels = levels;
    pack->refused |= pack->period == 0 && row->gap != 0;
  }
  pack->differ |= levels ^ pack->first_levels;
  if (row->reading) {
    int32_t step = pack->any_reading ? signed32((uint32_t)row->count - (uint32_t)pack->last_count) : 0;
    unsigned width = step > -128 && step < 128 ? 1 : step > -32768 && step < 32768 ? 2 : 4;
    pack->refused |= (uint32_t)step == 0x80000000u;
    pack->first_count = pack->any_reading ? pack->first_count : row->count;
    pack->last_count = row->count;
    pack->any_reading = 1;
    pack->widths.step = width > pack->widths.step ? width : pack->widths.step;
  }
  if (pack->period == 0 && row->gap > 0xffff) {
    pack->widths.gap = 4;
  }
  pack->rows++;
}

size_t tl_pack_header(tl_pack *pack, uint8_t *body) {
  unsigned levels = 0;
  while (levels < 8 && pack->differ >> (8 * levels) != 0) {
    levels = levels == 0 ? 1 : levels * 2;
  }
  pack->widths.levels = levels;
  size_t size = pack->widths.step + levels + pack->widths.gap;
  if (pack->refused || pack->rows < 1 || pack->rows > TL_MOST_ROWS || 42 + pack->rows * size > TL_MOST_BODY) {
    return 0;
  }
  unsigned step_code = pack->widths.step == 4 ? 3 : pack->widths.step;
  unsigned levels_code = levels == 8 ? 4 : levels == 4 ? 3 : levels;
  body[1] = (uint8_t)(step_code | levels_code << 2 | pack->widths.gap / 2 << 5);
  tl_put(body + 20, (uint32_t)pack->first_count, 4);
  tl_put(body + 32, pack->first_levels, 8);
  tl_put(body + 40, pack->rows, 2);
  return 42 + pack->rows * size;
}

size_t tl_pack_write(tl_pack *pack, const tl_row *row, int first, uint8_t *at) {
  const tl_widths *w = &pack->widths;
  if (first) {
    pack->last_count = pack->first_count;
  }
  uint32_t step = 1u << (8 * w->step - (w->step > 0)); /* no reading */
  if (row->reading) {
    step = (uint32_t)row->count - (uint32_t)pack->last_count;
    pack->last_count = row->count;
  }
  tl_put(at, step, w->step);
  tl_put(at + w->step, row->levels & pack->known, w->levels);
  tl_put(at + w->step + w->levels, row->gap, w->gap);
  return w->step + w->levels + w->gap;
}

void tl_row_at(const uint8_t *body, uint32_t index, int32_t *count, tl_row *row) {
  tl_widths w = tl_widths_of(body[1]);
  const uint8_t *at = body + 42 + index * (w.step + w.levels + w.gap);
  uint64_t known = tl_get(body + 24, 8);
  uint64_t header = tl_get(body + 32, 8);
  uint64_t low = tl_get(at + w.step, w.levels);
  uint64_t mask = w.levels == 8 ? 0 : UINT64_MAX << (8 * w.levels);
  if (index == 0) {
    *count = signed32((uint32_t)tl_get(body + 20, 4));
  }
  row->reading = 0;
  row->count = 0;
  if (w.step > 0) {
    uint32_t step = (uint32_t)tl_get(at, w.step);
    uint32_t sign = 1u << (8 * w.step - 1);
    if (step != sign) {
      uint32_t extended = w.step < 4 && (step & sign) ? step | UINT32_MAX << (8 * w.step) : step;
      *count = signed32((uint32_t)*count + extended);
      row->reading = 1;
      row->count = *count;
    }
  }
  row->levels = ((header & mask) | low) & known;
  row->gap = (uint32_t)tl_get(at + w.step + w.levels, w.gap);
}
