/* The tables of SPEC 5 and 6, shared by the parts of the codec. Not for users of it. */
#ifndef TL_TABLES_H
#define TL_TABLES_H

#include <string.h>

#include "tripline_link.h"

typedef enum { TL_U8, TL_H8, TL_U16, TL_I32, TL_U32, TL_H32, TL_U64, TL_H64, TL_STRING, TL_ROWLIST, TL_EDGELIST, TL_DATA } tl_shape;

typedef struct { const char *text; uint8_t code; } tl_word;

typedef struct {
  const char *name;
  tl_shape shape;
  uint16_t offset;      /* of strings: not used, they follow one another */
  uint64_t least, most; /* of strings: fewest and most bytes */
  const tl_word *words; /* ended by a null text, or null */
} tl_field;

typedef struct {
  const char *name;
  uint8_t type;
  uint16_t fixed; /* bytes before strings, rows, edges, data */
  uint8_t count;
  const tl_field *fields;
} tl_layout;

const tl_layout *tl_layout_of(uint8_t type);
const tl_layout *tl_layout_named(const uint8_t *name, size_t length);

/* Bytes of a field of fixed size, else 0. */
unsigned tl_size(tl_shape shape);

/* Value of a hexadecimal digit in either case, or -1. */
int tl_hex_digit(uint8_t c);

uint64_t tl_get(const uint8_t *at, unsigned size);
void tl_put(uint8_t *at, uint64_t value, unsigned size);

/* Widths of a samples row in bytes, from its form. */
typedef struct { unsigned step, levels, gap; } tl_widths;
tl_widths tl_widths_of(uint8_t form);

/* Collects what the canonical widths depend on, row by row, then writes rows one by one. */
typedef struct {
  uint64_t known, first_levels, differ;
  int32_t first_count, last_count;
  uint32_t period;
  uint32_t rows;
  int any_reading, refused;
  tl_widths widths;
} tl_pack;

void tl_pack_begin(tl_pack *pack, uint32_t period, uint64_t known);
void tl_pack_row(tl_pack *pack, const tl_row *row);
/* Header fields and form from what was collected; 0 if it does not fit. */
size_t tl_pack_header(tl_pack *pack, uint8_t *body);
/* Writes the next row at `at`; returns its size. */
size_t tl_pack_write(tl_pack *pack, const tl_row *row, int first, uint8_t *at);

/* Row `index` of a valid body; count carries the count of the last reading along. */
void tl_row_at(const uint8_t *body, uint32_t index, int32_t *count, tl_row *row);

#endif
