package withers.packed;

/** A way to hold something in few bytes, which mean nothing outside of this process. */
public interface Packing<T> {

  void pack(T value, Packer out);

  /** What {@link #pack} was given, or something equal. */
  T unpack(Unpacker in);
}
