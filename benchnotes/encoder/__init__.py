"""The learned reader: what it learnt laid over the published encoder, opened with onnxruntime. Knows no talk."""
