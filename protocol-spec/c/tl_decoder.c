/* Messages out of a stream of bytes, frames or lines (SPEC 8, 12), one byte at a time. */
#include "tl_tables.h"

enum { OPEN, FRAMES, LINES };
enum { LF = 10, CR = 13, REPEAT_REACH = 16, MOST_UNIT = 519 };

void tl_decoder_begin(tl_decoder *d, uint8_t *held, size_t room, tl_handler handler, void *context) {
  memset(d, 0, sizeof *d);
  d->held = held;
  d->room = room;
  d->handler = handler;
  d->context = context;
  d->blank_so_far = 1;
}

static void end_unit(tl_decoder *d) {
  d->unit = 0;
  d->held_count = 0;
  d->line_start = 0;
  d->line_dead = 0;
  d->blank_so_far = 1;
}

static void damage(tl_decoder *d, uint64_t bytes) {
  d->counters.damaged++;
  d->counters.skipped += bytes;
}

static int is_blank(const tl_decoder *d, size_t from, size_t to) {
  for (size_t i = from; i < to; i++) {
    if (d->held[i] != CR && d->held[i] != LF) {
      return 0;
    }
  }
  return 1;
}

static void hold(tl_decoder *d, uint8_t byte) {
  d->unit++;
  if (d->line_dead) {
    return;
  }
  if (d->held_count == d->room && d->line_start > 0) {
    d->held_count -= d->line_start;
    memmove(d->held, d->held + d->line_start, d->held_count);
    d->line_start = 0;
  }
  if (d->held_count == d->room) {
    d->line_dead = 1;
    d->held_count = 0;
    return;
  }
  d->held[d->held_count++] = byte;
}

/* Whether the next message to the host is no repeat (D9). */
static int in_sequence(tl_decoder *d, uint16_t sequence, int identity, uint32_t session) {
  uint16_t ahead = (uint16_t)(sequence - d->expected);
  int new_session = identity && !(d->session_known && session == d->session);
  if (d->sequence_known && ahead != 0) {
    if (new_session) {
      d->counters.restarts++;
    } else if (ahead < 0x8000) {
      d->counters.lost += ahead;
    } else if (0x10000 - ahead <= REPEAT_REACH) {
      return 0;
    } else {
      d->counters.restarts++;
    }
  }
  d->sequence_known = 1;
  d->expected = (uint16_t)(sequence + 1);
  if (identity) {
    d->session_known = 1;
    d->session = session;
  }
  return 1;
}

static void take(tl_decoder *d, tl_verdict verdict, size_t length, uint64_t wire) {
  if (verdict != TL_NO_SEQUENCE && d->data[0] < 0x40) {
    int identity = verdict == TL_OK && d->data[0] == TL_IDENTITY;
    uint32_t session = identity ? (uint32_t)tl_get(d->data + 16, 4) : 0;
    if (!in_sequence(d, (uint16_t)tl_get(d->data + 2, 2), identity, session)) {
      verdict = TL_REPEATED;
    }
  }
  if (verdict == TL_OK) {
    d->counters.messages++;
    d->counters.delivered += wire;
  } else {
    d->counters.set_aside += wire;
    d->counters.unknown += verdict == TL_UNKNOWN;
    d->counters.repeated += verdict == TL_REPEATED;
    d->counters.malformed += verdict == TL_MALFORMED || verdict == TL_NO_SEQUENCE;
  }
  if (d->handler != NULL) {
    d->handler(d->context, verdict == TL_NO_SEQUENCE ? TL_MALFORMED : verdict, d->data, length);
  }
}

static void end_by_zero(tl_decoder *d) {
  size_t length = (size_t)-1;
  int all_here = d->unit == d->held_count && d->unit <= MOST_UNIT;
  if (all_here) {
    length = tl_unstuff(d->held, d->held_count, d->data);
  }
  if (length < 8 || length > TL_MOST_BODY + 4 ||
      tl_check(d->data, length - 4) != tl_get(d->data + length - 4, 4)) {
    if (all_here && is_blank(d, 0, d->held_count)) {
      d->counters.idle += d->unit + 1;
      d->mode = OPEN;
    } else {
      damage(d, d->unit + 1);
    }
  } else {
    d->mode = FRAMES;
    take(d, tl_verify(d->data, length - 4), length - 4, d->unit + 1);
  }
  end_unit(d);
}

/* Length of the content of the present line if it is whole, else (size_t)-1. */
static size_t whole_line(const tl_decoder *d) {
  static const size_t none = (size_t)-1;
  size_t end = d->held_count;
  if (d->line_dead || end - d->line_start >= TL_MOST_LINE) {
    return none;
  }
  if (end > d->line_start && d->held[end - 1] == CR) {
    end--;
  }
  if (end - d->line_start < 10 || d->held[end - 10] != ' ' || d->held[end - 9] != '~') {
    return none;
  }
  uint32_t check = 0;
  for (size_t i = end - 8; i < end; i++) {
    int digit = tl_hex_digit(d->held[i]);
    if (digit < 0) {
      return none;
    }
    check = check << 4 | (uint32_t)digit;
  }
  size_t length = end - 10 - d->line_start;
  return tl_check(d->held + d->line_start, length) == check ? length : none;
}

static void end_by_line_feed(tl_decoder *d) {
  size_t content = whole_line(d);
  if (content != (size_t)-1) {
    uint64_t line = d->held_count - d->line_start;
    uint64_t before = d->unit - line;
    if (before > 0 && d->blank_so_far) {
      d->counters.idle += before;
    } else if (before > 0) {
      damage(d, before);
    }
    d->mode = LINES;
    size_t length;
    tl_verdict verdict = tl_read_line(d->held + d->line_start, content, d->data, &length);
    take(d, verdict, length, line + 1);
    end_unit(d);
  } else if (d->mode == LINES) {
    if (d->unit == 0 || (d->unit == 1 && d->held[0] == CR)) {
      d->counters.idle += d->unit + 1;
    } else {
      damage(d, d->unit + 1);
    }
    end_unit(d);
  } else {
    d->blank_so_far = d->blank_so_far && !d->line_dead && is_blank(d, d->line_start, d->held_count);
    d->line_dead = 0;
    hold(d, LF);
    d->line_start = d->held_count;
    if (d->unit > MOST_UNIT) {
      d->held_count = 0;
      d->line_start = 0;
    }
  }
}

/* Too long for a frame: it may be text that begins after the last LF. */
static void open(tl_decoder *d) {
  d->mode = OPEN;
  for (size_t i = d->held_count; i > 0; i--) {
    if (d->held[i - 1] == LF) {
      d->blank_so_far = is_blank(d, 0, i - 1);
      d->line_start = i;
      return;
    }
  }
}

void tl_decoder_take(tl_decoder *d, const uint8_t *bytes, size_t length) {
  d->counters.bytes += length;
  for (size_t i = 0; i < length; i++) {
    if (bytes[i] == 0) {
      end_by_zero(d);
    } else if (bytes[i] == LF && d->mode != FRAMES) {
      end_by_line_feed(d);
    } else {
      hold(d, bytes[i]);
      if (d->mode == FRAMES && d->unit > MOST_UNIT) {
        open(d);
      }
    }
  }
}

void tl_decoder_finish(tl_decoder *d) {
  if (d->unit > 0) {
    damage(d, d->unit);
    end_unit(d);
  }
}
