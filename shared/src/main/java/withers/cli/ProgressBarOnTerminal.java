package withers.cli;

import java.io.PrintStream;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** A bar on a terminal's last line. */
record ProgressBarOnTerminal(ProgressBar bar) implements Progress {
  private static final int WIDTH = 79;
  private static final int MILLIS_BETWEEN_UPDATES = 200;

  static ProgressBarOnTerminal start(PrintStream err, String task, long total) {
    return new ProgressBarOnTerminal(
        new ProgressBarBuilder()
            .setTaskName(task)
            .setInitialMax(total > 0 ? total : -1)
            .setStyle(ProgressBarStyle.ASCII)
            .setUpdateIntervalMillis(MILLIS_BETWEEN_UPDATES)
            .setConsumer(new ConsoleProgressBarConsumer(err, WIDTH))
            .build());
  }

  @Override
  public void advance(long steps) {
    bar.stepBy(steps);
  }

  @Override
  public void close() {
    bar.close();
  }
}
