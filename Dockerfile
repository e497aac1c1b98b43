# One static program and a folder for its data. Build: docker build -t coursewright .
# Run:   docker run -p 127.0.0.1:7310:7310 -v coursewright:/data coursewright
FROM golang:1.26 AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -ldflags='-s -w' -o /out/coursewright ./cmd/coursewright \
 && mkdir /out/data

FROM scratch
COPY --from=build /out/coursewright /coursewright
# Numbers, for there is no user table in the image. A volume takes the owner of the folder it covers.
COPY --from=build --chown=65532:65532 /out/data /data
USER 65532:65532
VOLUME /data
EXPOSE 7310
ENTRYPOINT ["/coursewright"]
CMD ["serve", "--listen", "0.0.0.0:7310", "--data", "/data/coursewright.db"]
