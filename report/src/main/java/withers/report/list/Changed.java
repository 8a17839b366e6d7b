package withers.report.list;

import withers.report.text.Texts;

/** Says what changed since the reader was told last. */
public final class Changed {
  private Changed() {}

  /** A sentence or two. */
  public static String in(FollowUpList list, Texts texts) {
    int fresh = list.size(Mark.NEW);
    int open = list.size(Mark.OPEN);
    String counts =
        list.since()
            .map(
                day ->
                    texts.say("list.changes.since", fresh, open, list.settled(), texts.date(day)))
            .orElseGet(() -> texts.say("list.changes", fresh, open, list.settled()));
    return list.isReminder() ? counts + " " + texts.say("list.reminder") : counts;
  }
}
