/* Bodies: checking them, taking them apart, writing them (SPEC 5, 6, D6, D7). */
#include "tl_tables.h"

/* Well-formed UTF-8 (RFC 3629) without control characters. */
static int plain(const uint8_t *s, size_t n) {
  size_t i = 0;
  while (i < n) {
    uint8_t c = s[i++];
    unsigned more = c < 0x80 ? 0 : c < 0xe0 ? 1 : c < 0xf0 ? 2 : 3;
    if (c < 0x20 || c == 0x7f || (c >= 0x80 && c < 0xc2) || c > 0xf4 || more > n - i) {
      return 0;
    }
    for (unsigned k = 0; k < more; k++) {
      uint8_t low = 0x80;
      uint8_t high = 0xbf;
      if (k == 0) {
        low = c == 0xc2 || c == 0xe0 ? 0xa0 : c == 0xf0 ? 0x90 : 0x80;
        high = c == 0xed ? 0x9f : c == 0xf4 ? 0x8f : 0xbf;
      }
      if (s[i] < low || s[i] > high) {
        return 0;
      }
      i++;
    }
  }
  return 1;
}

static int rows_fit(const uint8_t *body, size_t length) {
  tl_widths w = tl_widths_of(body[1]);
  size_t count = (size_t)tl_get(body + 40, 2);
  size_t size = w.step + w.levels + w.gap;
  return count >= 1 && count <= TL_MOST_ROWS && length == 42 + count * size &&
         (tl_get(body + 16, 4) == 0) == (w.gap != 0) && tl_get(body + 42 + w.step + w.levels, w.gap) == 0;
}

static int edges_fit(const uint8_t *body, size_t length) {
  size_t count = body[18];
  if (count < 1 || count > TL_MOST_EDGES || length != 19 + 5 * count) {
    return 0;
  }
  for (size_t i = 0; i < count; i++) {
    if (body[19 + 5 * i + 4] & 0x40) {
      return 0;
    }
  }
  return 1;
}

static int holds(const tl_layout *layout, const uint8_t *body, size_t length) {
  size_t at = layout->fixed;
  if (length < at) {
    return 0;
  }
  for (unsigned i = 0; i < layout->count; i++) {
    const tl_field *f = &layout->fields[i];
    unsigned size = tl_size(f->shape);
    if (f->shape == TL_STRING) {
      if (at >= length || body[at] < f->least || body[at] > f->most || body[at] > length - at - 1 ||
          !plain(body + at + 1, body[at])) {
        return 0;
      }
      at += 1u + body[at];
    } else if (f->shape == TL_ROWLIST) {
      if (!rows_fit(body, length)) {
        return 0;
      }
    } else if (f->shape == TL_EDGELIST) {
      if (!edges_fit(body, length)) {
        return 0;
      }
    } else if (f->shape == TL_DATA) {
      uint64_t data = tl_get(body + 12, 2);
      if (data < 1 || data > TL_MOST_DATA || 14 + data > length) {
        return 0;
      }
    } else {
      uint64_t value = tl_get(body + f->offset, size);
      if (value < f->least || value > f->most) {
        return 0;
      }
    }
  }
  return layout->type != TL_CHANNEL || body[4] != 1 || tl_get(body + 8, 4) != 0;
}

tl_verdict tl_verify(const uint8_t *body, size_t length) {
  const tl_layout *layout = length < 4 ? NULL : tl_layout_of(body[0]);
  if (layout == NULL) {
    return length < 4 ? TL_MALFORMED : TL_UNKNOWN;
  }
  uint8_t form = body[1];
  if (layout->type == TL_SAMPLES ? (form >> 2 & 7u) > 4 || form >> 5 > 2 : form != 0) {
    return TL_UNKNOWN;
  }
  return holds(layout, body, length) ? TL_OK : TL_MALFORMED;
}

static const uint8_t *text_at(const uint8_t *at, tl_bytes *text) {
  text->length = at[0];
  text->at = at + 1;
  return at + 1 + at[0];
}

#define GET8(at) body[at]
#define GET16(at) ((uint16_t)tl_get(body + (at), 2))
#define GET32(at) ((uint32_t)tl_get(body + (at), 4))
#define GET64(at) tl_get(body + (at), 8)

static tl_verdict read_samples(const uint8_t *body, const tl_room *room, tl_samples *s) {
  s->number = GET32(4);
  s->stamp = GET64(8);
  s->period = GET32(16);
  s->known = GET64(24);
  s->count = GET16(40);
  if (room == NULL || room->rows == NULL || room->rows_room < s->count) {
    return TL_NO_ROOM;
  }
  int32_t count = 0;
  for (uint32_t i = 0; i < s->count; i++) {
    tl_row_at(body, i, &count, &room->rows[i]);
  }
  s->rows = room->rows;
  return TL_OK;
}

static tl_verdict read_edges(const uint8_t *body, const tl_room *room, tl_edges *e) {
  e->number = GET32(4);
  e->stamp = GET64(8);
  e->fraction = GET16(16);
  e->count = body[18];
  if (room == NULL || room->edges == NULL || room->edges_room < e->count) {
    return TL_NO_ROOM;
  }
  for (unsigned i = 0; i < e->count; i++) {
    const uint8_t *at = body + 19 + 5 * i;
    room->edges[i].gap = (uint32_t)tl_get(at, 4);
    room->edges[i].contact = at[4] & 0x3f;
    room->edges[i].level = at[4] >> 7;
  }
  e->edges = room->edges;
  return TL_OK;
}

static int32_t signed_at(const uint8_t *at) {
  uint32_t bits = (uint32_t)tl_get(at, 4);
  return bits < 0x80000000u ? (int32_t)bits : (int32_t)(bits - 0x80000000u) - 0x7fffffff - 1;
}

tl_verdict tl_read(const uint8_t *body, size_t length, const tl_room *room, tl_message *message) {
  tl_verdict verdict = tl_verify(body, length);
  if (verdict != TL_OK) {
    return verdict;
  }
  memset(message, 0, sizeof *message);
  message->type = body[0];
  message->sequence = GET16(2);
  switch (body[0]) {
    case TL_IDENTITY: {
      tl_identity *m = &message->as.identity;
      m->major = GET8(4), m->minor = GET8(5), m->clock_bits = GET8(6), m->contacts = GET8(7);
      m->positions = GET8(8), m->encodings = GET8(9), m->body_limit = GET16(10);
      m->abilities = GET32(12), m->session = GET32(16), m->rate_min = GET32(20), m->rate_max = GET32(24);
      text_at(text_at(text_at(body + 28, &m->model), &m->serial), &m->firmware);
      break;
    }
    case TL_CHANNEL: {
      tl_channel *m = &message->as.channel;
      m->kind = GET8(4), m->number = GET8(5), m->closed_level = GET8(6), m->reports = GET8(7);
      m->numerator = signed_at(body + 8), m->denominator = GET32(12), m->modulus = GET32(16);
      m->delay = GET32(20), m->resolution = GET32(24);
      text_at(text_at(body + 28, &m->name), &m->unit);
      break;
    }
    case TL_STATUS: {
      tl_status *m = &message->as.status;
      m->state = GET8(4), m->utc_source = GET8(5), m->backlog = GET16(6), m->stamp = GET64(8);
      m->utc = GET64(16), m->session = GET32(24), m->rate = GET32(28), m->samples = GET32(32);
      m->samples_lost = GET32(36), m->edges_lost = GET32(40), m->messages_dropped = GET32(44);
      m->bad_received = GET32(48);
      break;
    }
    case TL_SAMPLES:
      return read_samples(body, room, &message->as.samples);
    case TL_EDGES:
      return read_edges(body, room, &message->as.edges);
    case TL_MARK: {
      tl_mark *m = &message->as.mark;
      m->kind = GET8(4), m->source = GET8(5), m->number = GET16(6), m->stamp = GET64(8);
      text_at(body + 16, &m->text);
      break;
    }
    case TL_LOSS: {
      tl_loss *m = &message->as.loss;
      m->cause = GET8(4), m->what = GET8(5), m->count = GET32(8), m->number = GET32(12);
      m->stamp = GET64(16), m->until = GET64(24);
      break;
    }
    case TL_ANSWER: {
      tl_answer *m = &message->as.answer;
      m->command = GET8(4), m->result = GET8(5), m->to = GET16(6), m->value = GET32(8);
      break;
    }
    case TL_STORED: {
      tl_stored *m = &message->as.stored;
      m->index = GET16(4), m->count = GET16(6), m->id = GET32(8), m->bytes = GET32(12);
      m->check = GET32(16), m->samples = GET32(20), m->started = GET64(24), m->duration = GET64(32);
      text_at(body + 40, &m->label);
      break;
    }
    case TL_PIECE: {
      tl_piece *m = &message->as.piece;
      m->id = GET32(4), m->offset = GET32(8), m->data.length = GET16(12), m->data.at = body + 14;
      break;
    }
    case TL_HELLO:
      message->as.hello.major = GET8(4), message->as.hello.minor = GET8(5);
      message->as.hello.encoding = GET8(6);
      break;
    case TL_START:
      message->as.start.rate = GET32(4), message->as.start.gather = GET16(8);
      break;
    case TL_RATE:
      message->as.rate = GET32(4);
      break;
    case TL_PLACE:
      message->as.place.kind = GET8(4);
      text_at(body + 5, &message->as.place.text);
      break;
    case TL_TIME:
      message->as.time = GET64(4);
      break;
    case TL_FETCH:
      message->as.fetch.id = GET32(4), message->as.fetch.offset = GET32(8);
      message->as.fetch.length = GET32(12);
      break;
    default: /* stop, list, query: no fields */
      break;
  }
  return TL_OK;
}

/* Appends a string; a body too long already stays so. */
static size_t put_text(uint8_t *body, size_t at, const tl_bytes *text) {
  if (text->length > 255 || at + 1 + text->length > TL_MOST_BODY) {
    return TL_MOST_BODY + 1;
  }
  body[at] = (uint8_t)text->length;
  memcpy(body + at + 1, text->at, text->length);
  return at + 1 + text->length;
}

static size_t write_samples(const tl_samples *s, uint8_t *body) {
  tl_pack pack;
  tl_put(body + 4, s->number, 4);
  tl_put(body + 8, s->stamp, 8);
  tl_put(body + 16, s->period, 4);
  tl_put(body + 24, s->known, 8);
  tl_pack_begin(&pack, s->period, s->known);
  for (unsigned i = 0; i < s->count; i++) {
    tl_pack_row(&pack, &s->rows[i]);
  }
  size_t length = tl_pack_header(&pack, body);
  size_t at = 42;
  for (unsigned i = 0; length > 0 && i < s->count; i++) {
    at += tl_pack_write(&pack, &s->rows[i], i == 0, body + at);
  }
  return length;
}

static size_t write_edges(const tl_edges *e, uint8_t *body) {
  tl_put(body + 4, e->number, 4);
  tl_put(body + 8, e->stamp, 8);
  tl_put(body + 16, e->fraction, 2);
  body[18] = e->count;
  if (e->count > TL_MOST_EDGES) {
    return 0;
  }
  for (unsigned i = 0; i < e->count; i++) {
    uint8_t *at = body + 19 + 5 * i;
    if (e->edges[i].contact > 63 || e->edges[i].level > 1) {
      return 0;
    }
    tl_put(at, e->edges[i].gap, 4);
    at[4] = (uint8_t)(e->edges[i].contact | e->edges[i].level << 7);
  }
  return 19 + 5u * e->count;
}

#define PUT8(at, value) body[at] = (value)
#define PUT16(at, value) tl_put(body + (at), value, 2)
#define PUT32(at, value) tl_put(body + (at), value, 4)
#define PUT64(at, value) tl_put(body + (at), value, 8)

static size_t write_fields(const tl_message *message, size_t fixed, uint8_t *body) {
  size_t at = fixed;
  switch (message->type) {
    case TL_IDENTITY: {
      const tl_identity *m = &message->as.identity;
      PUT8(4, m->major), PUT8(5, m->minor), PUT8(6, m->clock_bits), PUT8(7, m->contacts);
      PUT8(8, m->positions), PUT8(9, m->encodings), PUT16(10, m->body_limit);
      PUT32(12, m->abilities), PUT32(16, m->session), PUT32(20, m->rate_min), PUT32(24, m->rate_max);
      at = put_text(body, put_text(body, put_text(body, at, &m->model), &m->serial), &m->firmware);
      break;
    }
    case TL_CHANNEL: {
      const tl_channel *m = &message->as.channel;
      PUT8(4, m->kind), PUT8(5, m->number), PUT8(6, m->closed_level), PUT8(7, m->reports);
      PUT32(8, (uint32_t)m->numerator), PUT32(12, m->denominator), PUT32(16, m->modulus);
      PUT32(20, m->delay), PUT32(24, m->resolution);
      at = put_text(body, put_text(body, at, &m->name), &m->unit);
      break;
    }
    case TL_STATUS: {
      const tl_status *m = &message->as.status;
      PUT8(4, m->state), PUT8(5, m->utc_source), PUT16(6, m->backlog), PUT64(8, m->stamp);
      PUT64(16, m->utc), PUT32(24, m->session), PUT32(28, m->rate), PUT32(32, m->samples);
      PUT32(36, m->samples_lost), PUT32(40, m->edges_lost), PUT32(44, m->messages_dropped);
      PUT32(48, m->bad_received);
      break;
    }
    case TL_SAMPLES:
      return write_samples(&message->as.samples, body);
    case TL_EDGES:
      return write_edges(&message->as.edges, body);
    case TL_MARK: {
      const tl_mark *m = &message->as.mark;
      PUT8(4, m->kind), PUT8(5, m->source), PUT16(6, m->number), PUT64(8, m->stamp);
      at = put_text(body, at, &m->text);
      break;
    }
    case TL_LOSS: {
      const tl_loss *m = &message->as.loss;
      PUT8(4, m->cause), PUT8(5, m->what), PUT32(8, m->count), PUT32(12, m->number);
      PUT64(16, m->stamp), PUT64(24, m->until);
      break;
    }
    case TL_ANSWER: {
      const tl_answer *m = &message->as.answer;
      PUT8(4, m->command), PUT8(5, m->result), PUT16(6, m->to), PUT32(8, m->value);
      break;
    }
    case TL_STORED: {
      const tl_stored *m = &message->as.stored;
      PUT16(4, m->index), PUT16(6, m->count), PUT32(8, m->id), PUT32(12, m->bytes);
      PUT32(16, m->check), PUT32(20, m->samples), PUT64(24, m->started), PUT64(32, m->duration);
      at = put_text(body, at, &m->label);
      break;
    }
    case TL_PIECE: {
      const tl_piece *m = &message->as.piece;
      PUT32(4, m->id), PUT32(8, m->offset), PUT16(12, m->data.length);
      if (m->data.length > TL_MOST_DATA) {
        return 0;
      }
      memcpy(body + 14, m->data.at, m->data.length);
      at = 14u + m->data.length;
      break;
    }
    case TL_HELLO:
      PUT8(4, message->as.hello.major), PUT8(5, message->as.hello.minor);
      PUT8(6, message->as.hello.encoding);
      break;
    case TL_START:
      PUT32(4, message->as.start.rate), PUT16(8, message->as.start.gather);
      break;
    case TL_RATE:
      PUT32(4, message->as.rate);
      break;
    case TL_PLACE:
      PUT8(4, message->as.place.kind);
      at = put_text(body, at, &message->as.place.text);
      break;
    case TL_TIME:
      PUT64(4, message->as.time);
      break;
    case TL_FETCH:
      PUT32(4, message->as.fetch.id), PUT32(8, message->as.fetch.offset);
      PUT32(12, message->as.fetch.length);
      break;
    default:
      break;
  }
  return at;
}

size_t tl_write_body(const tl_message *message, uint8_t *body) {
  const tl_layout *layout = tl_layout_of(message->type);
  if (layout == NULL) {
    return 0;
  }
  memset(body, 0, layout->fixed);
  body[0] = message->type;
  tl_put(body + 2, message->sequence, 2);
  size_t length = write_fields(message, layout->fixed, body);
  return length >= 4 && length <= TL_MOST_BODY && tl_verify(body, length) == TL_OK ? length : 0;
}
