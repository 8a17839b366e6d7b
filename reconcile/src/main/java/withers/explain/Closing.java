package withers.explain;

import java.util.Map;

/** What records would close a follow-up of a kind. */
final class Closing {

  private static final String OTHERWISE = "records by which the sentence above is no longer true";

  private static final Map<String, String> BY_KIND =
      Map.ofEntries(
          Map.entry(
              "found-waiting",
              "a reunion, a return to the owner or a handover for good, on the day of the report or later; or 90 days"),
          Map.entry(
              "chips-diverge", "registrations of both chips to one person, or the end of one"),
          Map.entry(
              "contact-behind",
              "a registration to the keeper, or to somebody of the household; or a handover to somebody else"),
          Map.entry(
              "records-behind",
              "a handover or visits in our own records that name who is registered; or a registration to the keeper"),
          Map.entry(
              "unregistered",
              "a registration of one of the chips, or a registry's answer that it holds one"),
          Map.entry(
              "details-differ", "the same details in the registration and in our newest record"),
          Map.entry(
              "cannot-tell", "records by which it can be told whether one person is meant, or two"),
          Map.entry(
              "number-damaged",
              "the record's number read well, the record going off the list, or a death"));

  private Closing() {}

  static String of(String kind) {
    return BY_KIND.getOrDefault(kind, OTHERWISE);
  }
}
