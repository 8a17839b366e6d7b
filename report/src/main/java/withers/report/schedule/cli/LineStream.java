package withers.report.schedule.cli;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

/** Hands on what is written to it, line by line. */
final class LineStream extends OutputStream {
  private final ByteArrayOutputStream line = new ByteArrayOutputStream();
  private final Consumer<String> lines;

  private LineStream(Consumer<String> lines) {
    this.lines = lines;
  }

  /** A stream in UTF-8 whose lines go there; empty ones are left out. */
  static PrintStream to(Consumer<String> lines) {
    return new PrintStream(new LineStream(lines), true, StandardCharsets.UTF_8);
  }

  @Override
  public synchronized void write(int b) {
    if (b == '\n') {
      end();
    } else {
      line.write(b);
    }
  }

  private void end() {
    String text = line.toString(StandardCharsets.UTF_8).stripTrailing();
    line.reset();
    if (!text.isEmpty()) {
      lines.accept(text);
    }
  }

  @Override
  public synchronized void close() {
    end();
  }
}
