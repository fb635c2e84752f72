/*
 * Lets a test drive the codec. Standard input: streams, each a u32 length, a u32 chunk size and the
 * bytes. Every stream goes through a new decoder, cut into chunks, and is then finished. Standard
 * output, per stream: for each message 'M', a u8 verdict, a u16 length and its body (of a message
 * handed on then also, taken apart and written anew: u16 length and frame, u16 length and line);
 * at the end 'C' and the twelve counters as u64, in the order of SPEC 12. Numbers are little-endian.
 */
#include <stdio.h>
#include <stdlib.h>

#include "tl_tables.h"

static tl_row rows[TL_MOST_ROWS];
static tl_edge edges[TL_MOST_EDGES];
static uint8_t held[TL_MOST_LINE];

static void out(const void *bytes, size_t length) {
  if (fwrite(bytes, 1, length, stdout) != length) {
    exit(1);
  }
}

static void out_number(uint64_t value, unsigned size) {
  uint8_t bytes[8];
  tl_put(bytes, value, size);
  out(bytes, size);
}

static void on_message(void *context, tl_verdict verdict, const uint8_t *body, size_t length) {
  (void)context;
  out("M", 1);
  out_number((uint64_t)verdict, 1);
  out_number(length, 2);
  out(body, length);
  if (verdict == TL_OK) {
    static const tl_room room = {rows, TL_MOST_ROWS, edges, TL_MOST_EDGES};
    tl_message message;
    uint8_t anew[TL_MOST_BODY];
    uint8_t frame[TL_MOST_FRAME];
    char line[TL_MOST_LINE];
    size_t written = tl_read(body, length, &room, &message) == TL_OK ? tl_write_body(&message, anew) : 0;
    size_t size = written == 0 ? 0 : tl_write_frame(anew, written, frame);
    out_number(size, 2);
    out(frame, size);
    size = written == 0 ? 0 : tl_write_line(anew, written, line);
    out_number(size, 2);
    out(line, size);
  }
}

int main(void) {
  static uint8_t head[8];
  while (fread(head, 1, sizeof head, stdin) == sizeof head) {
    size_t length = (size_t)tl_get(head, 4);
    size_t chunk = (size_t)tl_get(head + 4, 4);
    uint8_t *stream = malloc(length + 1);
    if (stream == NULL || fread(stream, 1, length, stdin) != length) {
      return 1;
    }
    tl_decoder decoder;
    tl_decoder_begin(&decoder, held, sizeof held, on_message, NULL);
    for (size_t at = 0; at < length; at += chunk) {
      tl_decoder_take(&decoder, stream + at, length - at < chunk ? length - at : chunk);
    }
    tl_decoder_finish(&decoder);
    free(stream);
    const tl_counters *c = &decoder.counters;
    const uint64_t counters[] = {c->bytes, c->delivered, c->set_aside, c->skipped, c->idle, c->messages,
                                 c->damaged, c->malformed, c->unknown, c->repeated, c->lost, c->restarts};
    out("C", 1);
    for (unsigned i = 0; i < 12; i++) {
      out_number(counters[i], 8);
    }
    if (fflush(stdout) != 0) {
      return 1;
    }
  }
  return 0;
}
