namespace DailyAdjust.Files.Formats;

/// <summary>A compressed file cannot be read to its end; the message says why, to stand after "the file is compressed, but".</summary>
internal sealed class UnpackException(string why, Exception? inner = null) : Exception(why, inner);
