"""Writes the encoder as an ONNX graph without weights: models/reader/encoder.onnx.  python -m training.graph

The weights come from a file beside it, `encoder.bin`, float32 in the order of `layout`; laying it out needs no
PyTorch (benchnotes/encoder/laying.py). Needs the package `onnx`.
"""

from __future__ import annotations

import sys
from pathlib import Path

import onnx
from onnx import TensorProto, helper

from benchnotes.encoder.layout import BLOCKS, HEADS, INNER, SIZE, Slot, layout

OPSET = 20
NORM_EPSILON = 1e-5


class Graph:
    def __init__(self) -> None:
        self.nodes: list[onnx.NodeProto] = []
        self.initializers: list[onnx.TensorProto] = []

    def add(self, kind: str, *inputs: str, name: str, **attributes: object) -> str:
        self.nodes.append(helper.make_node(kind, list(inputs), [name], name=name, **attributes))
        return name

    def constant(self, name: str, values: list[int] | list[float], kind: int, shape: list[int]) -> str:
        self.initializers.append(helper.make_tensor(name, kind, shape, values))
        return name

    def weights(self, slot: Slot) -> None:
        tensor = TensorProto(name=slot.name, data_type=TensorProto.FLOAT, dims=slot.shape)
        tensor.data_location = TensorProto.EXTERNAL
        for key, value in (("location", "encoder.bin"), ("offset", slot.offset), ("length", slot.bytes)):
            tensor.external_data.add(key=key, value=str(value))
        self.initializers.append(tensor)

    def linear(self, values: str, name: str) -> str:
        product = self.add("MatMul", values, f"{name}.weight", name=f"{name}.product")
        return self.add("Add", product, f"{name}.bias", name=f"{name}.out")

    def norm(self, values: str, name: str) -> str:
        return self.add(
            "LayerNormalization", values, f"{name}.weight", f"{name}.bias", name=f"{name}.out",
            axis=-1, epsilon=NORM_EPSILON,
        )  # fmt: skip

    def split(self, values: str, name: str) -> str:
        apart = self.add("Reshape", values, "apart", name=f"{name}.apart")
        return self.add("Transpose", apart, name=f"{name}.turned", perm=[0, 2, 1, 3])


def block(graph: Graph, values: str, at: int) -> str:
    name = f"encoder.layer.{at}"
    attention = f"{name}.attention.attn"
    query, key, value = (
        graph.split(graph.linear(values, f"{attention}.{part}"), f"{attention}.{part}") for part in "qkv"
    )
    scaled = graph.add("Mul", query, "scale", name=f"{attention}.scaled")
    turned = graph.add("Transpose", key, name=f"{attention}.key", perm=[0, 1, 3, 2])
    scores = graph.add("MatMul", scaled, turned, name=f"{attention}.scores")
    biased = graph.add("Add", scores, "bias", name=f"{attention}.biased")
    shares = graph.add("Softmax", biased, name=f"{attention}.shares", axis=-1)
    mixed = graph.add("MatMul", shares, value, name=f"{attention}.mixed")
    together = graph.add("Transpose", mixed, name=f"{attention}.together", perm=[0, 2, 1, 3])
    joined = graph.add("Reshape", together, "joined", name=f"{attention}.joined")
    attended = graph.add("Add", values, graph.linear(joined, f"{attention}.o"), name=f"{attention}.sum")
    values = graph.norm(attended, f"{name}.attention.LayerNorm")
    inner = graph.add("Gelu", graph.linear(values, f"{name}.intermediate.dense"), name=f"{name}.gelu")
    summed = graph.add("Add", values, graph.linear(inner, f"{name}.output.dense"), name=f"{name}.sum")
    return graph.norm(summed, f"{name}.output.LayerNorm")


def encoder() -> onnx.ModelProto:
    graph = Graph()
    for slot in layout():
        graph.weights(slot)
    graph.constant("apart", [0, 0, HEADS, SIZE // HEADS], TensorProto.INT64, [4])
    graph.constant("joined", [0, 0, SIZE], TensorProto.INT64, [3])
    graph.constant("scale", [(SIZE // HEADS) ** -0.5], TensorProto.FLOAT, [])
    words = graph.add("Gather", "embeddings.word_embeddings.weight", "ids", name="words")
    places = graph.add("Gather", "embeddings.position_embeddings.weight", "places", name="placed")
    values = graph.norm(graph.add("Add", words, places, name="embedded"), "embeddings.LayerNorm")
    for at in range(BLOCKS):
        values = block(graph, values, at)
    graph.nodes[-1].output[0] = "hidden"
    made = helper.make_graph(
        graph.nodes,
        "encoder",
        [
            helper.make_tensor_value_info("ids", TensorProto.INT64, ["windows", "pieces"]),
            helper.make_tensor_value_info("places", TensorProto.INT64, ["windows", "pieces"]),
            helper.make_tensor_value_info("bias", TensorProto.FLOAT, ["windows", HEADS, "pieces", "pieces"]),
        ],
        [helper.make_tensor_value_info("hidden", TensorProto.FLOAT, ["windows", "pieces", SIZE])],
        graph.initializers,
    )
    return helper.make_model(made, opset_imports=[helper.make_opsetid("", OPSET)], ir_version=10)


def main() -> None:
    out = Path(__file__).parents[1] / "models" / "reader" / "encoder.onnx"
    out.write_bytes(encoder().SerializeToString())
    print(f"{out}: {out.stat().st_size} bytes, inner size {INNER}", file=sys.stderr)


if __name__ == "__main__":
    main()
