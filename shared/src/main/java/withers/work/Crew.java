package withers.work;

import java.util.List;

/** Workers, wherever they are, who do the parts of a piece of work. */
public interface Crew {

  /** The side of whoever ordered the work. Several threads come to it. */
  interface Desk {

    /** Answers what a worker asks who can't know it. The same question has the same answer. */
    byte[] answer(byte[] question);

    /** Takes the result of a part; each part comes once or never. */
    void done(int part, byte[] result);
  }

  /**
   * Has parts done, and returns when all are done or nobody does more. What was not done is left to
   * the caller.
   *
   * @param order what every worker has to know
   * @param parts how many, each named by its number from 0
   */
  void work(String order, int parts, Desk desk);

  /** Who did how much of the last work, in the order of their names. */
  List<Share> shares();

  /** What somebody should read of the last work: who refused, or that nobody came. */
  List<String> notes();

  /**
   * What one worker did.
   *
   * @param worker its name: of the machine, and which worker there
   * @param millis time from taking each part to its result, waiting for answers included, summed
   * @param processorMillis the processor's time of it, summed
   */
  record Share(String worker, int parts, long millis, long processorMillis) {

    /** This and more of the same worker. */
    public Share plus(Share more) {
      return new Share(
          worker, parts + more.parts, millis + more.millis, processorMillis + more.processorMillis);
    }
  }
}
