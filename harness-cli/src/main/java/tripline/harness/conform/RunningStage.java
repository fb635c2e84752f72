package tripline.harness.conform;

import java.util.List;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.EdgeBlock;
import tripline.link.Fetch;
import tripline.link.Hello;
import tripline.link.ListStored;
import tripline.link.LoggerState;
import tripline.link.LossMessage;
import tripline.link.LossWhat;
import tripline.link.MarkKind;
import tripline.link.MarkMessage;
import tripline.link.Place;
import tripline.link.Query;
import tripline.link.Rate;
import tripline.link.Result;
import tripline.link.SampleBlock;
import tripline.link.Start;
import tripline.link.Status;
import tripline.link.Stop;

/** Start, run, ask in between, stop; with blocks gathered long and short (SPEC §6, L6 to L12). */
final class RunningStage {
  /** Long enough for two statuses a second apart. */
  private static final long QUIET_NS = 2_600_000_000L;

  private static final long SILENCE_NS = 600_000_000L;
  private static final int LONG_GATHER_MS = 100;
  private static final int MARKS = 5;

  private static final long SECOND_NS = 1_000_000_000L;

  private final Exam exam;
  private final Talker talker;
  private final Rates rates;

  RunningStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
    this.rates = new Rates(exam);
  }

  void run() throws LineGone {
    Reply started = rates.start(LONG_GATHER_MS);
    if (!started.is(Result.DONE)) {
      return;
    }
    int from = started.after();
    talker.listen(QUIET_NS);
    int quietTo = exam.mark();
    whileItRuns();
    stop(from, quietTo, started.value(), LONG_GATHER_MS);
    again();
  }

  private void whileItRuns() throws LineGone {
    RefusalStage.whileBusy(exam, new Start(0, 0), Ability.START_STOP);
    RefusalStage.whileBusy(exam, new Rate(exam.identity().rateMaxMilliHz()), Ability.RATE);
    RefusalStage.whileBusy(exam, new ListStored(), Ability.STORED);
    RefusalStage.whileBusy(exam, new Fetch(1, 0, 0), Ability.STORED);
    Reply hello = talker.ask(new Hello(1, 0, 0));
    works(hello.is(Result.DONE), "hello while it runs: " + hello.word());
    Reply query = talker.ask(new Query());
    List<Status> said = query.before(Status.class);
    works(
        query.is(Result.DONE)
            && !said.isEmpty()
            && said.get(said.size() - 1).state() == LoggerState.RUNNING,
        "query while it runs: %s, and a status that does not say running".formatted(query.word()));
    if (exam.can(Ability.PLACE)) {
      marks();
    }
    int from = exam.mark();
    talker.listen(SECOND_NS / 2 + talker.lineNs(600));
    works(
        exam.since(from).stream().anyMatch(h -> h.message() instanceof SampleBlock) || rates.slow(),
        "no samples any more after hello, query and place");
  }

  private void works(boolean kept, String what) {
    exam.ledger().judge(Duty.EVERY_STATE, kept, what);
  }

  /** Marks before the answer, of the kind and text asked for, and numbered. */
  private void marks() throws LineGone {
    for (int i = 0; i < MARKS; i++) {
      String text = i == 0 ? "späť \"1\" \\" : "";
      int kind = i % 4 + 1;
      Reply reply = talker.ask(new Place(kind, text));
      works(reply.is(Result.DONE), "place while it runs: " + reply.word());
      List<MarkMessage> marks = reply.before(MarkMessage.class);
      boolean kept =
          marks.stream()
              .anyMatch(
                  m ->
                      m.kind() == MarkKind.of(kind)
                          && m.text().equals(text)
                          && m.number() == reply.value());
      exam.ledger()
          .judge(
              Duty.PLACES,
              kept || !reply.is(Result.DONE),
              "place %d was answered %d; before that came %s"
                  .formatted(kind, reply.value(), marks.isEmpty() ? "no mark" : marks));
    }
  }

  private void stop(int from, int quietTo, long rate, int gather) throws LineGone {
    Reply reply = talker.ask(new Stop());
    int to = reply.after();
    exam.add(new Run(Run.Begun.BY_US, from, quietTo, to, rate, gather));
    List<Status> statuses = reply.before(Status.class);
    boolean status =
        !statuses.isEmpty() && statuses.get(statuses.size() - 1).state() == LoggerState.IDLE;
    exam.ledger()
        .judge(
            Duty.STOPS,
            reply.is(Result.DONE) && status,
            "stop: %s, %s"
                .formatted(
                    reply.word(),
                    status ? "after it a status" : "before it no status that says idle"));
    if (status) {
      counts(statuses.get(statuses.size() - 1), exam.witness().heard().subList(from, to));
    }
    talker.listen(SILENCE_NS);
    long late =
        exam.since(to).stream()
            .filter(h -> h.message() instanceof SampleBlock || h.message() instanceof EdgeBlock)
            .count();
    exam.ledger()
        .judge(
            Duty.STOPS,
            late == 0,
            "%d blocks of samples or edges after the answer to stop".formatted(late));
    Reply idle = talker.ask(new Stop());
    exam.ledger().judge(Duty.STOPS, idle.is(Result.DONE), "stop while idle: " + idle.word());
  }

  /** The last number that came is the number of instants, whatever was lost in between. */
  private void counts(Status status, List<Heard> run) {
    long instants = 0;
    long lost = 0;
    for (Heard heard : run) {
      if (heard.message() instanceof SampleBlock block) {
        instants = block.number() + block.rows();
      } else if (heard.message() instanceof LossMessage loss && loss.what() == LossWhat.SAMPLES) {
        instants = loss.number() + loss.count();
        lost += loss.count();
      }
    }
    exam.ledger()
        .judge(
            Duty.STOPS,
            status.samples() == instants && status.samplesLost() == lost,
            "status at stop counts %d samples, %d of them lost; what came counts %d, and %d lost"
                .formatted(status.samples(), status.samplesLost(), instants, lost));
  }

  /** A second run: gathered as usual, its start said twice. */
  private void again() throws LineGone {
    Reply started = new RetryStage(exam).start(new Start(rates.toTell(), 0));
    if (!started.is(Result.DONE)) {
      return;
    }
    int from = started.after();
    talker.listen(SECOND_NS);
    stop(from, from, started.value(), 0);
  }
}
