/*
 * The Tripline link (../SPEC.md) in C99 for loggers and hosts: no heap, no input or output, nothing
 * but the C standard library. All memory is the caller's. Not one function keeps a static variable,
 * so any of them may be called from several threads on different objects.
 *
 * A logger needs tl_write_body + tl_write_frame (or tl_write_line) to talk, and a tl_decoder with a
 * buffer of 520 bytes to listen.
 */
#ifndef TRIPLINE_LINK_H
#define TRIPLINE_LINK_H

#include <stddef.h>
#include <stdint.h>

#define TL_MOST_BODY 512u    /* longest body */
#define TL_MOST_FRAME 520u   /* longest frame with its delimiter */
#define TL_MOST_LINE 6144u   /* longest line with its LF */
#define TL_MOST_ROWS 470u    /* rows of one samples message */
#define TL_MOST_EDGES 96u    /* edges of one edges message */
#define TL_MOST_DATA 480u    /* bytes of one piece */

enum tl_type {
  TL_IDENTITY = 0x01, TL_CHANNEL, TL_STATUS, TL_SAMPLES, TL_EDGES, TL_MARK, TL_LOSS, TL_ANSWER,
  TL_STORED, TL_PIECE,
  TL_HELLO = 0x41, TL_START, TL_STOP, TL_RATE, TL_PLACE, TL_TIME, TL_LIST, TL_FETCH, TL_QUERY
};

/* Bytes that belong to somebody else: after reading, to the body. Not ended by a zero byte. */
typedef struct { const uint8_t *at; uint16_t length; } tl_bytes;

typedef struct {
  uint8_t major, minor, clock_bits, contacts, positions, encodings;
  uint16_t body_limit;
  uint32_t abilities, session, rate_min, rate_max;
  tl_bytes model, serial, firmware;
} tl_identity;

typedef struct {
  uint8_t kind, number, closed_level, reports;
  int32_t numerator;
  uint32_t denominator, modulus, delay, resolution;
  tl_bytes name, unit;
} tl_channel;

typedef struct {
  uint8_t state, utc_source;
  uint16_t backlog;
  uint64_t stamp, utc;
  uint32_t session, rate, samples, samples_lost, edges_lost, messages_dropped, bad_received;
} tl_status;

typedef struct {
  uint64_t levels;
  int32_t count;    /* looked at only if there is a reading */
  uint32_t gap;     /* microseconds since the row before; only if the period is 0 */
  uint8_t reading;  /* 0: none in this row */
} tl_row;

typedef struct {
  uint64_t stamp, known;
  uint32_t number, period;
  uint16_t count;
  const tl_row *rows;
} tl_samples;

typedef struct { uint32_t gap; uint8_t contact, level; } tl_edge;

typedef struct {
  uint64_t stamp;
  uint32_t number;
  uint16_t fraction;
  uint8_t count;
  const tl_edge *edges;
} tl_edges;

typedef struct {
  uint8_t kind, source;
  uint16_t number;
  uint64_t stamp;
  tl_bytes text;
} tl_mark;

typedef struct {
  uint8_t cause, what;
  uint32_t count, number;
  uint64_t stamp, until;
} tl_loss;

typedef struct { uint8_t command, result; uint16_t to; uint32_t value; } tl_answer;

typedef struct {
  uint16_t index, count;
  uint32_t id, bytes, check, samples;
  uint64_t started, duration;
  tl_bytes label;
} tl_stored;

typedef struct { uint32_t id, offset; tl_bytes data; } tl_piece;
typedef struct { uint8_t major, minor, encoding; } tl_hello;
typedef struct { uint32_t rate; uint16_t gather; } tl_start;
typedef struct { uint8_t kind; tl_bytes text; } tl_place;
typedef struct { uint32_t id, offset, length; } tl_fetch;

typedef struct {
  uint8_t type;
  uint16_t sequence;
  union {
    tl_identity identity;
    tl_channel channel;
    tl_status status;
    tl_samples samples;
    tl_edges edges;
    tl_mark mark;
    tl_loss loss;
    tl_answer answer;
    tl_stored stored;
    tl_piece piece;
    tl_hello hello;
    tl_start start;
    uint32_t rate;
    tl_place place;
    uint64_t time;
    tl_fetch fetch;
  } as;
} tl_message;

/* Where tl_read puts rows and edges; both may be null where no such message is expected. */
typedef struct {
  tl_row *rows;
  uint16_t rows_room;
  tl_edge *edges;
  uint8_t edges_room;
} tl_room;

typedef enum { TL_OK, TL_UNKNOWN, TL_MALFORMED, TL_REPEATED, TL_NO_ROOM, TL_NO_SEQUENCE } tl_verdict;

/* CRC-32C of some bytes (SPEC 2). */
uint32_t tl_check(const uint8_t *data, size_t length);

/* Stuffs data; out needs length + length / 254 + 1 bytes. Returns how many it wrote, no delimiter. */
size_t tl_stuff(const uint8_t *data, size_t length, uint8_t *out);

/* Undoes it; out needs length bytes. Returns how many, or (size_t)-1 if a code reaches too far. */
size_t tl_unstuff(const uint8_t *wire, size_t length, uint8_t *out);

/* Whether a body is valid: type and form known, every field in its range. */
tl_verdict tl_verify(const uint8_t *body, size_t length);

/* Takes a body apart. TL_OK, TL_UNKNOWN, TL_MALFORMED or TL_NO_ROOM. */
tl_verdict tl_read(const uint8_t *body, size_t length, const tl_room *room, tl_message *message);

/* Writes the canonical body; body needs TL_MOST_BODY bytes. Returns its length, 0 if a field is out of range. */
size_t tl_write_body(const tl_message *message, uint8_t *body);

/* Writes a body as a frame with its delimiter; out needs TL_MOST_FRAME bytes. Returns how many. */
size_t tl_write_frame(const uint8_t *body, size_t length, uint8_t *out);

/* Writes a valid body as a line with its LF; out needs TL_MOST_LINE bytes. Returns how many. */
size_t tl_write_line(const uint8_t *body, size_t length, char *out);

/*
 * Reads the content of a whole line (all before " ~") into the canonical body of the same message.
 * TL_OK; TL_UNKNOWN and TL_MALFORMED give the four bytes of the header; TL_NO_SEQUENCE gives nothing.
 */
tl_verdict tl_read_line(const uint8_t *line, size_t length, uint8_t *body, size_t *body_length);

typedef struct {
  uint64_t bytes, delivered, set_aside, skipped, idle;
  uint64_t messages, damaged, malformed, unknown, repeated, lost, restarts;
} tl_counters;

typedef struct tl_decoder tl_decoder;

/* Called with TL_OK for a message handed on, otherwise for one set aside and why. */
typedef void (*tl_handler)(void *context, tl_verdict verdict, const uint8_t *body, size_t length);

struct tl_decoder {
  tl_handler handler;
  void *context;
  uint8_t *held;   /* the caller's */
  size_t room;     /* of held: at least 520; TL_MOST_LINE to accept every line */
  size_t held_count, line_start;
  uint64_t unit;   /* bytes of the present unit */
  int mode, line_dead, blank_so_far;
  int sequence_known, session_known;
  uint16_t expected;
  uint32_t session;
  tl_counters counters;
  uint8_t data[TL_MOST_FRAME];
};

void tl_decoder_begin(tl_decoder *decoder, uint8_t *held, size_t room, tl_handler handler, void *context);
void tl_decoder_take(tl_decoder *decoder, const uint8_t *bytes, size_t length);
void tl_decoder_finish(tl_decoder *decoder);

#endif
