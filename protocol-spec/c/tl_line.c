/* Lines (SPEC 7): bodies to text and back. */
#include "tl_tables.h"

/* ---- writing */

static char *put_string(char *to, const char *text) {
  while (*text != 0) {
    *to++ = *text++;
  }
  return to;
}

static char *put_decimal(char *to, uint64_t value) {
  char digits[20];
  int n = 0;
  do {
    digits[n++] = (char)('0' + value % 10);
    value /= 10;
  } while (value > 0);
  while (n > 0) {
    *to++ = digits[--n];
  }
  return to;
}

static char *put_signed(char *to, int32_t value) {
  if (value < 0) {
    *to++ = '-';
    return put_decimal(to, 0u - (uint32_t)value);
  }
  return put_decimal(to, (uint32_t)value);
}

static char *put_hex(char *to, uint64_t value, int fewest) {
  int n = fewest;
  while (n < 16 && value >> (4 * n) != 0) {
    n++;
  }
  while (n > 0) {
    n--;
    *to++ = "0123456789abcdef"[value >> (4 * n) & 15u];
  }
  return to;
}

static char *put_rows(char *to, const uint8_t *body) {
  uint32_t rows = (uint32_t)tl_get(body + 40, 2);
  uint32_t period = (uint32_t)tl_get(body + 16, 4);
  uint64_t before = 0;
  int32_t count = 0;
  for (uint32_t i = 0; i < rows; i++) {
    tl_row row;
    tl_row_at(body, i, &count, &row);
    if (i > 0) {
      *to++ = ',';
    }
    if (row.reading) {
      to = put_signed(to, row.count);
    } else {
      *to++ = '-';
    }
    if (i == 0 || row.levels != before) {
      *to++ = '/';
      to = put_hex(to, row.levels, 1);
    }
    if (i > 0 && period == 0) {
      *to++ = '+';
      to = put_decimal(to, row.gap);
    }
    before = row.levels;
  }
  return to;
}

static char *put_edges(char *to, const uint8_t *body) {
  for (unsigned i = 0; i < body[18]; i++) {
    const uint8_t *at = body + 19 + 5 * i;
    if (i > 0) {
      *to++ = ',';
    }
    to = put_decimal(to, at[4] & 0x3fu);
    *to++ = ':';
    *to++ = at[4] & 0x80 ? '1' : '0';
    if (tl_get(at, 4) != 0) {
      *to++ = '+';
      to = put_decimal(to, tl_get(at, 4));
    }
  }
  return to;
}

static char *put_value(char *to, const tl_field *f, const uint8_t *body) {
  uint64_t value = tl_get(body + f->offset, tl_size(f->shape));
  switch (f->shape) {
    case TL_ROWLIST:
      return put_rows(to, body);
    case TL_EDGELIST:
      return put_edges(to, body);
    case TL_DATA:
      for (unsigned i = 0; i < tl_get(body + 12, 2); i++) {
        to = put_hex(to, body[14 + i], 2);
      }
      return to;
    case TL_H8:
    case TL_H32:
    case TL_H64:
      return put_hex(to, value, 1);
    case TL_I32: {
      int negative = value >= 0x80000000u;
      if (negative) {
        *to++ = '-';
      }
      return put_decimal(to, negative ? 0x100000000u - value : value);
    }
    default:
      for (const tl_word *w = f->words; w != NULL && w->text != NULL; w++) {
        if (w->code == value) {
          return put_string(to, w->text);
        }
      }
      return put_decimal(to, value);
  }
}

size_t tl_write_line(const uint8_t *body, size_t length, char *out) {
  const tl_layout *layout = tl_layout_of(body[0]);
  if (tl_verify(body, length) != TL_OK) {
    return 0;
  }
  char *to = put_string(out, layout->name);
  *to++ = ' ';
  to = put_decimal(to, tl_get(body + 2, 2));
  const uint8_t *string = body + layout->fixed;
  for (unsigned i = 0; i < layout->count; i++) {
    const tl_field *f = &layout->fields[i];
    *to++ = ' ';
    to = put_string(to, f->name);
    *to++ = '=';
    if (f->shape == TL_STRING) {
      *to++ = '"';
      for (unsigned k = 1; k <= string[0]; k++) {
        if (string[k] == '"' || string[k] == '\\') {
          *to++ = '\\';
        }
        *to++ = (char)string[k];
      }
      *to++ = '"';
      string += 1 + string[0];
    } else {
      to = put_value(to, f, body);
    }
  }
  uint32_t check = tl_check((const uint8_t *)out, (size_t)(to - out));
  *to++ = ' ';
  *to++ = '~';
  to = put_hex(to, check, 8);
  *to++ = '\n';
  return (size_t)(to - out);
}

/* ---- reading */

typedef struct { const uint8_t *at, *end; } cursor;

static int next_is(const cursor *c, char what) { return c->at < c->end && *c->at == (uint8_t)what; }

static int pass(cursor *c, char what) {
  int is = next_is(c, what);
  c->at += is;
  return is;
}

static int is_digit(const cursor *c) { return c->at < c->end && *c->at >= '0' && *c->at <= '9'; }

int tl_hex_digit(uint8_t c) {
  if (c >= '0' && c <= '9') {
    return c - '0';
  }
  if (c >= 'a' && c <= 'f') {
    return c - 'a' + 10;
  }
  return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/* 1 to 16 digits in the base. */
static int number(cursor *c, unsigned base, uint64_t *value) {
  int digits = 0;
  *value = 0;
  while (c->at < c->end) {
    int digit = tl_hex_digit(*c->at);
    if (digit < 0 || (unsigned)digit >= base) {
      break;
    }
    if (++digits > 16) {
      return 0;
    }
    *value = *value * base + (unsigned)digit;
    c->at++;
  }
  return digits > 0;
}

/* A decimal with or without a minus sign, as the pattern of an i32. */
static int signed_number(cursor *c, uint64_t *bits) {
  int negative = pass(c, '-');
  if (!number(c, 10, bits) || *bits > (negative ? 0x80000000u : 0x7fffffffu)) {
    return 0;
  }
  *bits = negative ? (0u - *bits) & 0xffffffffu : *bits;
  return 1;
}

static int word(cursor *c, const tl_word *words, uint64_t *value) {
  if (is_digit(c)) {
    return number(c, 10, value);
  }
  size_t length = 0;
  while (c->at + length < c->end && c->at[length] != ' ') {
    length++;
  }
  for (; words->text != NULL; words++) {
    if (strlen(words->text) == length && memcmp(words->text, c->at, length) == 0) {
      *value = words->code;
      c->at += length;
      return 1;
    }
  }
  return 0;
}

static int string(cursor *c, const tl_field *f, uint8_t *body, size_t *at) {
  size_t length = 0;
  if (!pass(c, '"')) {
    return 0;
  }
  while (c->at < c->end && *c->at != '"') {
    if (pass(c, '\\') && !next_is(c, '"') && !next_is(c, '\\')) {
      return 0;
    }
    if (length == f->most) {
      return 0;
    }
    body[*at + 1 + length++] = *c->at++;
  }
  body[*at] = (uint8_t)length;
  *at += 1 + length;
  return pass(c, '"');
}

static int data(cursor *c, uint8_t *body, size_t *at) {
  size_t length = 0;
  while (c->at < c->end && *c->at != ' ') {
    int high = tl_hex_digit(c->at[0]);
    int low = c->end - c->at > 1 ? tl_hex_digit(c->at[1]) : -1;
    if (high < 0 || low < 0 || length == TL_MOST_DATA) {
      return 0;
    }
    body[14 + length++] = (uint8_t)(high << 4 | low);
    c->at += 2;
  }
  tl_put(body + 12, length, 2);
  *at = 14 + length;
  return 1;
}

/* One item of rows; levels come in from the row before. */
static int row_item(cursor *c, uint32_t period, tl_row *row) {
  uint64_t value = 0;
  row->reading = 1;
  row->count = 0;
  row->gap = 0;
  cursor after = *c;
  if (pass(&after, '-') && !is_digit(&after)) {
    row->reading = 0;
    *c = after;
  } else {
    if (!signed_number(c, &value)) {
      return 0;
    }
    row->count = value < 0x80000000u ? (int32_t)value : (int32_t)(value - 0x80000000u) - 0x7fffffff - 1;
  }
  if (pass(c, '/') && !number(c, 16, &row->levels)) {
    return 0;
  }
  if (period == 0 && pass(c, '+')) {
    if (!number(c, 10, &value) || value > 0xffffffffu) {
      return 0;
    }
    row->gap = (uint32_t)value;
  }
  return 1;
}

/* Reads the rows twice: for their widths, then to write them. No memory but one row. */
static int rows(cursor *c, uint8_t *body, size_t *length) {
  uint32_t period = (uint32_t)tl_get(body + 16, 4);
  tl_pack pack;
  tl_row row;
  cursor again = *c;
  tl_pack_begin(&pack, period, tl_get(body + 24, 8));
  row.levels = 0;
  do {
    if (!row_item(c, period, &row) || pack.rows == TL_MOST_ROWS) {
      return 0;
    }
    tl_pack_row(&pack, &row);
  } while (pass(c, ','));
  *length = tl_pack_header(&pack, body);
  if (*length == 0) {
    return 0;
  }
  size_t at = 42;
  row.levels = 0;
  for (uint32_t i = 0; i < pack.rows; i++) {
    (void)row_item(&again, period, &row);
    (void)pass(&again, ',');
    at += tl_pack_write(&pack, &row, i == 0, body + at);
  }
  return 1;
}

static int edges(cursor *c, uint8_t *body, size_t *length) {
  unsigned count = 0;
  do {
    uint64_t contact;
    uint64_t level;
    uint64_t gap = 0;
    if (!number(c, 10, &contact) || !pass(c, ':') || !number(c, 10, &level)) {
      return 0;
    }
    if (pass(c, '+') && !number(c, 10, &gap)) {
      return 0;
    }
    if (contact > 63 || level > 1 || gap > 0xffffffffu || count == TL_MOST_EDGES) {
      return 0;
    }
    tl_put(body + 19 + 5 * count, gap, 4);
    body[19 + 5 * count + 4] = (uint8_t)(contact | level << 7);
    count++;
  } while (pass(c, ','));
  body[18] = (uint8_t)count;
  *length = 19 + 5u * count;
  return 1;
}

static int value(cursor *c, const tl_field *f, uint8_t *body, size_t *length) {
  uint64_t got = 0;
  int read = 0;
  switch (f->shape) {
    case TL_STRING:
      return string(c, f, body, length);
    case TL_ROWLIST:
      return rows(c, body, length);
    case TL_EDGELIST:
      return edges(c, body, length);
    case TL_DATA:
      return data(c, body, length);
    case TL_H8:
    case TL_H32:
    case TL_H64:
      read = number(c, 16, &got);
      break;
    case TL_I32:
      read = signed_number(c, &got);
      break;
    default:
      read = f->words != NULL ? word(c, f->words, &got) : number(c, 10, &got);
      break;
  }
  if (!read || got < f->least || got > f->most) {
    return 0;
  }
  tl_put(body + f->offset, got, tl_size(f->shape));
  return 1;
}

static int fields(cursor *c, const tl_layout *layout, uint8_t *body, size_t *length) {
  *length = layout->fixed;
  for (unsigned i = 0; i < layout->count; i++) {
    const tl_field *f = &layout->fields[i];
    size_t name = strlen(f->name);
    if (!pass(c, ' ') || (size_t)(c->end - c->at) < name || memcmp(c->at, f->name, name) != 0) {
      return 0;
    }
    c->at += name;
    if (!pass(c, '=') || !value(c, f, body, length) || (c->at < c->end && *c->at != ' ')) {
      return 0;
    }
  }
  return 1;
}

tl_verdict tl_read_line(const uint8_t *line, size_t length, uint8_t *body, size_t *body_length) {
  cursor c = {line, line + length};
  uint64_t sequence = 0;
  while (c.at < c.end && *c.at != ' ') {
    c.at++;
  }
  size_t name = (size_t)(c.at - line);
  *body_length = 0;
  if (!pass(&c, ' ') || !number(&c, 10, &sequence) || sequence > 65535 || (c.at < c.end && *c.at != ' ')) {
    return TL_NO_SEQUENCE;
  }
  const tl_layout *layout = tl_layout_named(line, name);
  memset(body, 0, layout == NULL ? 4 : layout->fixed);
  body[0] = layout == NULL ? 0 : layout->type;
  tl_put(body + 2, sequence, 2);
  *body_length = 4;
  if (layout == NULL) {
    return TL_UNKNOWN;
  }
  size_t whole = 0;
  if (!fields(&c, layout, body, &whole) || tl_verify(body, whole) != TL_OK) {
    return TL_MALFORMED;
  }
  *body_length = whole;
  return TL_OK;
}
