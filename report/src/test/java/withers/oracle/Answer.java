package withers.oracle;

import java.util.Comparator;

/**
 * What is found about one animal.
 *
 * @param anchor the animal's lowest chip number
 * @param kind the kind's stable name
 * @param organisation who acts
 */
record Answer(String anchor, String kind, String organisation) {

  static final Comparator<Answer> ORDER =
      Comparator.comparing(Answer::anchor)
          .thenComparing(Answer::kind)
          .thenComparing(Answer::organisation);

  @Override
  public String toString() {
    return anchor + " " + kind + ", for " + organisation;
  }
}
