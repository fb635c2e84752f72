package tripline.harness.rehearse.script;

/** Every line that can be said, with what it does: the help of the command and of a rehearsal. */
public final class Grammar {
  private Grammar() {}

  /** As shown by help, at most 80 columns. */
  public static final String TEXT =
      """
      Lines, from the keyboard, standard input or a script (# begins a comment):
        crank open|closed [TURNS] [at RATE]   turn the handwheel, RATE turns a second;
                              without TURNS to the hard stop
        crank to X [at RATE]  turn it until the drive stands at X turns
        touch open|closed     turn it to the hard stop, press, let go
        run open|closed       motor, until limit, torque or stop ends it
        stop                  let go of whatever it is (an empty line does it too)
        adjust CAM TURNS      move a cam's trip point, + toward open
        set CAM               turn its adjuster until it trips where the valve stands
        press closed-stop|open-stop|adjusted|note [TEXT]      the logger's button
        wait SECONDS          let time pass
        await start|stop      wait until a host has started or stopped the logger
        after SECONDS LINE    do LINE later, while the lines below it go on
        unplug, plug          pull the logger's plug, put it back
        errors RATE           share of bits that arrive wrong from now on; 0 ends it
        stall SECONDS         nothing the logger sends gets through
        lose N                its next N messages vanish on the line
        overrun N             it misses N samples, and says so
        clock SECONDS         its clock steps, + forward
        restart               it loses its power for a moment
        where, truth          where the valve stands; how it really is built and set
        help, quit            these lines; the end

      A script, for one (while `record` or `watch` runs in another window):
        # until the host has started the logger
        await start
        touch closed
        press closed-stop
        touch open
        # while the valve is on its way down
        after 3 unplug
        after 8 plug
        touch closed
        await stop
        truth
      """;
}
