package withers.reconcile.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.TreeMap;
import withers.codec.Streams;
import withers.history.Periods;
import withers.organisation.Period;
import withers.organisation.PeriodDays;
import withers.run.PartWork;
import withers.workspace.Workspace;

/**
 * What tells programs apart that might judge a partition otherwise: the code of the rules and of
 * the log, this Java (whose tables of Unicode take part), the directory, and the lengths of time
 * that the workspace sets. Where the log is, and how it is reached, may differ.
 */
final class RulesStamp {

  private RulesStamp() {}

  /** The stamp of this program in a workspace: 64 hexadecimal digits. */
  static String of(Workspace workspace) {
    try {
      MessageDigest sha = CodeDigest.sha();
      CodeDigest.takeAll(PartWork.class, "withers", sha);
      CodeDigest.takeAll(Streams.class, "withers", sha);
      take("java " + Runtime.version().feature(), sha);
      sha.update(Files.readAllBytes(workspace.paths().organisations()));
      take(text(Periods.of(workspace.settings(), workspace.directory())), sha);
      return HexFormat.of().formatHex(sha.digest());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void take(String text, MessageDigest sha) {
    sha.update(text.getBytes(StandardCharsets.UTF_8));
  }

  private static String text(Periods periods) {
    StringBuilder text = new StringBuilder("handovers ").append(periods.handoverWindowDays());
    append("workspace", periods.ofWorkspace(), text);
    new TreeMap<>(periods.byOrganisation()).forEach((id, days) -> append(id.value(), days, text));
    return text.toString();
  }

  private static void append(String whose, PeriodDays days, StringBuilder text) {
    text.append('\n').append(whose);
    for (Period period : Period.values()) {
      text.append(' ').append(days.days(period));
    }
  }
}
